"""soapledger return."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import count, say
from ledger.cli.stock.bars import BARS, read_bars
from ledger.errors import BadInput
from ledger.operations.sell.take_back import take_back


def command(
    ctx: typer.Context,
    bars: BARS,
    from_: Annotated[str | None, typer.Option("--from", help="The customer.")] = None,
    stall: Annotated[str | None, typer.Option("--stall", help="The stall they were bought at.")] = None,
    reason: Annotated[str | None, typer.Option("--reason", help="Why they came back.")] = None,
    on: On = None,
) -> None:
    """Book bars that came back, on the returns shelf, e.g. soapledger return 26-118-0=2 --from tern-hall."""
    if from_ and stall:
        raise BadInput("Give --from a customer or --stall, not both.")
    here = desk(ctx)
    wanted = read_bars(bars)
    take_back(here.book(), wanted, customer=from_, stall=stall, on=here.day(on), reason=reason)
    say(f"{count(sum(wanted.values()), 'bar')} on the returns shelf. They do not go back on sale by themselves.")
    say(f'When someone decided so: soapledger resell {" ".join(bars)} --by NAME --reason "…"')
