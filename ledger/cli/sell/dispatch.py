"""soapledger dispatch."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Yes
from ledger.cli.kit.show import count, say
from ledger.cli.sell.filling import Order, say_papers, to_go
from ledger.cli.stock.bars import warn_of_holds
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.operations.sell.dispatch import dispatch
from ledger.units.money import parse_money


def command(
    ctx: typer.Context,
    customer: Annotated[str | None, typer.Argument(help="Who gets them: short name or name.")] = None,
    bars: Annotated[list[str] | None, typer.Argument(help="Batches and numbers, e.g. 26-118-0=6.")] = None,
    price: Annotated[str | None, typer.Option("--price", help="What one bar was sold for.")] = None,
    note: Annotated[str | None, typer.Option("--note", help="E.g. the number of your delivery note.")] = None,
    first: First = None,
    order: Order = None,
    yes: Yes = False,
    on: On = None,
) -> None:
    """Send released bars to a shop or a person, e.g. soapledger dispatch tern-hall 26-118-0=12 --price 4.50."""
    here = desk(ctx)
    going = to_go(here, customer, bars or [], order, yes=yes)
    customer, wanted = going.customer, going.bars
    each = parse_money(price, here.settings.currency, what="the price") if price else None
    whom = dispatch(
        here.book(),
        customer,
        wanted,
        on=here.day(on),
        price_minor=each,
        note=note,
        first=first_supplied(here, first),
        order=going.order,
    )
    say(f"{count(sum(wanted.values()), 'bar')} dispatched to {whom}.")
    say_papers(here, customer, going)
    warn_of_holds(here, wanted)
