"""soapledger sale pay."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, On, Yes
from ledger.cli.kit.show import say_wrapped, warn_of
from ledger.cli.sale.options import Bank, Card, Cash, Number, read_number, way_of
from ledger.errors import BadInput
from ledger.operations.sale.pay import pay, payable
from ledger.rows.sell.paid import balances
from ledger.units.money import parse_money, show_money
from ledger.views.sale.words import by_way


def command(
    ctx: typer.Context,
    which: Number,
    amount: Annotated[str, typer.Argument(help="How much, e.g. 26.00.", metavar="AMOUNT")],
    cash: Cash = False,
    card: Card = False,
    bank: Bank = False,
    back: Annotated[bool, typer.Option("--back", help="It was paid back.")] = False,
    note: Note = None,
    yes: Yes = False,
    on: On = None,
) -> None:
    """Book what was paid of a sale, or paid back, e.g. soapledger sale pay 12 26.00 --bank."""
    here = desk(ctx)
    number, currency = read_number(which), here.settings.currency
    minor = parse_money(amount, currency, what="what was paid")
    way = way_of(cash=cash, card=card, bank=bank)
    if way is None:
        raise BadInput("How was it paid? Add --cash, --card or --bank.")
    day = here.day(on)
    payable(here.rows(), number)
    stands = balances(here.rows(), [number])[number]
    owed = max(0, -stands.owed_minor if back else stands.owed_minor)
    if minor > owed and not stands.untold:
        left = f"{show_money(owed, currency)} is {'to be paid back' if back else 'owed'} of sale {number}"
        warn_of([f"{left}, not {show_money(minor, currency)}."], yes)
    after = pay(here.book(), number, minor, way, on=day, back=back, note=note)
    say_wrapped(
        f"{show_money(minor, currency)} {'paid back' if back else 'paid'} {by_way(way)}: sale {number}, {after.to}."
    )
    if after.owed_minor is None:
        say_wrapped("What is owed of it is not known: no price was told of some of it.")
    elif after.owed_minor < 0:
        say_wrapped(f"{show_money(-after.owed_minor, currency)} is to be paid back.")
    else:
        say_wrapped(
            f"{show_money(after.owed_minor, currency)} is still owed." if after.owed_minor else "Nothing is owed."
        )
