"""soapledger resell."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say_wrapped
from ledger.cli.stock.bars import BARS, read_bars, warn_of_holds
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.operations.sell.resell import resell


def command(
    ctx: typer.Context,
    bars: BARS,
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. the seal is unbroken.")],
    first: First = None,
    by: Annotated[str | None, typer.Option("--by", help="Who decided that they can be sold again (you).")] = None,
    on: On = None,
) -> None:
    """Put bars from the returns shelf back on sale, e.g. resell 26-118-0=3 --by Orla --reason "seal unbroken"."""
    here = desk(ctx)
    who = by or here.decider
    wanted = read_bars(bars)
    told = resell(here.book(), wanted, on=here.day(on), by=who, reason=reason, first=first_supplied(here, first))
    say_wrapped(f"{told}: back on sale, as {who.strip()} decided.")
    warn_of_holds(here, wanted)
