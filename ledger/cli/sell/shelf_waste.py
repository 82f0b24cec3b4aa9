"""soapledger shelf waste."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Why
from ledger.cli.kit.show import say_wrapped
from ledger.cli.stock.bars import BARS, read_bars
from ledger.operations.sell.shelf import throw_away_returned


def command(
    ctx: typer.Context,
    bars: BARS,
    reason: Why,
    by: Annotated[str | None, typer.Option("--by", help="Who decided so (you).")] = None,
    on: On = None,
) -> None:
    """Throw bars on the returns shelf away, by name, e.g. shelf waste 26-118-0=2 --by Orla --reason "wrapping torn"."""
    here = desk(ctx)
    who = by or here.decider
    told = throw_away_returned(here.book(), read_bars(bars), on=here.day(on), by=who, reason=reason)
    say_wrapped(f"{told}: thrown away from the returns shelf, as {who.strip()} decided.")
