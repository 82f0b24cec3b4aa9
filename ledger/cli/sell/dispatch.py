"""soapledger dispatch."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import count, say
from ledger.cli.stock.bars import BARS, read_bars, say_presumed_bare, warn_of_holds, without_a_label
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.operations.sell.dispatch import dispatch
from ledger.units.money import parse_money


def command(
    ctx: typer.Context,
    customer: Annotated[str, typer.Argument(help="Who gets them: short name or name.")],
    bars: BARS,
    price: Annotated[str | None, typer.Option("--price", help="What one bar was sold for.")] = None,
    note: Annotated[str | None, typer.Option("--note", help="E.g. the number of your delivery note.")] = None,
    first: First = None,
    on: On = None,
) -> None:
    """Send released bars to a shop or a person, e.g. soapledger dispatch tern-hall 26-118-0=12 --price 4.50."""
    here = desk(ctx)
    wanted = read_bars(bars)
    bare = without_a_label(here, wanted)
    each = parse_money(price, here.settings.currency, what="the price") if price else None
    whom = dispatch(
        here.book(), customer, wanted, on=here.day(on), price_minor=each, note=note, first=first_supplied(here, first)
    )
    say(f"{count(sum(wanted.values()), 'bar')} dispatched to {whom}.")
    say_presumed_bare(here, bare)
    warn_of_holds(here, wanted)
