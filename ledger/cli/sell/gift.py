"""soapledger gift."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say_wrapped
from ledger.cli.stock.bars import BARS, read_bars, warn_of_holds
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.operations.sell.gift import gift


def command(
    ctx: typer.Context,
    bars: BARS,
    to: Annotated[str | None, typer.Option("--to", help="To whom, so that a recall can find them.")] = None,
    what_for: Annotated[
        str | None, typer.Option("--for", help="What they are instead: own use, tester, sample, in your words.")
    ] = None,
    first: First = None,
    on: On = None,
) -> None:
    """Give released bars away, e.g. soapledger gift 26-118-0=2 --to "the school fair"; nothing of it is a sale."""
    here = desk(ctx)
    wanted = read_bars(bars)
    given = gift(here.book(), wanted, to=to, on=here.day(on), first=first_supplied(here, first), what_for=what_for)
    whom = f" to {given.whom}" if given.whom else ""
    say_wrapped(f"{given.bars} given away{whom}{f', as {what_for}' if what_for else ''}; it is no sale.")
    warn_of_holds(here, wanted)
