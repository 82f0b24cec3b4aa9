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
    by: Annotated[str, typer.Option("--by", help="Who decided so.")],
    reason: Why,
    on: On = None,
) -> None:
    """Throw bars on the returns shelf away, by name, e.g. shelf waste 26-118-0=2 --by Orla --reason "wrapping torn"."""
    here = desk(ctx)
    told = throw_away_returned(here.book(), read_bars(bars), on=here.day(on), by=by, reason=reason)
    say_wrapped(f"{told}: thrown away from the returns shelf, as {by.strip()} decided.")
