"""soapledger sale fee."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, On
from ledger.cli.kit.show import say_wrapped
from ledger.cli.sale.options import read_number
from ledger.errors import BadInput
from ledger.operations.sale.charge import charge
from ledger.units.money import parse_money, show_money
from ledger.units.words import FeeKind, checked
from ledger.views.sale.outlet import outlet_named

KINDS: tuple[FeeKind, ...] = get_args(FeeKind)


def command(
    ctx: typer.Context,
    what: Annotated[str, typer.Argument(help="pitch, card, post, commission or other.", metavar="KIND")],
    amount: Annotated[str, typer.Argument(help="How much, e.g. 15.00.", metavar="AMOUNT")],
    sale: Annotated[str | None, typer.Option("--sale", help="The sale it is of.")] = None,
    at: Annotated[str | None, typer.Option("--at", help="The stall or the customer it is of.")] = None,
    note: Note = None,
    on: On = None,
) -> None:
    """Book what selling cost, e.g. soapledger sale fee pitch 15 --at saturday."""
    here = desk(ctx)
    currency = here.settings.currency
    if sale and at:
        raise BadInput("Give --sale or --at, not both; a sale knows where it was.")
    known = checked(what.strip().casefold(), KINDS, what="a kind of fee")
    minor = parse_money(amount, currency, what="the fee")
    outlet = outlet_named(here.rows(), at) if at else None
    day, number = here.day(on), read_number(sale) if sale else None
    charge(
        here.book(),
        known,
        minor,
        on=day,
        sale=number,
        place_id=outlet.place_id if outlet else None,
        customer_id=outlet.customer_id if outlet else None,
        at=outlet.kept if outlet else "",
        note=note,
    )
    where = f" of sale {number}" if sale else f" at {outlet.name}" if outlet else ""
    say_wrapped(f"Fee{where}: {known}, {show_money(minor, currency)}.")
