"""soapledger shelf keep."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Why
from ledger.cli.kit.show import say_wrapped
from ledger.cli.stock.bars import BARS, read_bars
from ledger.operations.sell.shelf import keep_returned


def command(
    ctx: typer.Context,
    bars: BARS,
    reason: Why,
    by: Annotated[str | None, typer.Option("--by", help="Who decided so (you).")] = None,
    on: On = None,
) -> None:
    """Leave bars on the returns shelf, by name, e.g. shelf keep 26-118-0=2 --by Orla --reason "a complaint is open"."""
    here = desk(ctx)
    who = by or here.decider
    told = keep_returned(here.book(), read_bars(bars), on=here.day(on), by=who, reason=reason)
    say_wrapped(f"{told}: kept on the returns shelf, as {who.strip()} decided.")
