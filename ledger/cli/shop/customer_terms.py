"""soapledger customer terms."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say_wrapped
from ledger.cli.people.customer import Which
from ledger.errors import BadInput
from ledger.operations.shop.terms import Agreed, agree
from ledger.rows.people import customer_by_code
from ledger.rows.sell.terms import terms_on
from ledger.units.quantity import parse_pieces, parse_share
from ledger.views.shop.terms import terms_words


def command(
    ctx: typer.Context,
    which: Which,
    consignment: Annotated[
        bool, typer.Option("--sale-or-return", help="Bars stay yours until the shop's count.")
    ] = False,
    bought: Annotated[bool, typer.Option("--bought", help="They buy what you send: no longer sale or return.")] = False,
    commission: Annotated[
        str | None, typer.Option("--commission", help="What the shop keeps of the price.", metavar="PERCENT")
    ] = None,
    reduction: Annotated[
        str | None, typer.Option("--reduction", help="What your price is less for them.", metavar="PERCENT")
    ] = None,
    pay_in: Annotated[str | None, typer.Option("--pay-in", help="In how many days they pay.", metavar="DAYS")] = None,
    country: Annotated[str | None, typer.Option("--country", help="Where it goes; two letters, e.g. DE.")] = None,
    on: On = None,
) -> None:
    """Say what is agreed with a customer, e.g. customer terms tern-hall --sale-or-return --commission 30%."""
    here = desk(ctx)
    if consignment and bought:
        raise BadInput("--sale-or-return and --bought say different things; leave one of them out.")
    change = Agreed(
        True if consignment else False if bought else None,
        parse_share(commission, what="the commission") if commission else 0 if bought else None,
        parse_share(reduction, what="the reduction") if reduction else None,
        parse_pieces(pay_in, what="the number of days") if pay_in else None,
        _country(country) if country else None,
    )
    card, day = customer_by_code(here.rows(), which), here.day(on)
    agree(here.book(), card.code, change, on=day)
    say_wrapped(f"Agreed with {card.name}: {terms_words(terms_on(here.rows(), day, [card.id])[card.id])}.")


def _country(text: str) -> str:
    plain = text.strip().upper()
    if len(plain) != 2 or not plain.isascii() or not plain.isalpha():
        raise BadInput(f"'{text}' is no country; write its two letters, such as DE.")
    return plain
