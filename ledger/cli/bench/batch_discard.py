"""soapledger batch discard."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On, Why
from ledger.cli.kit.show import say
from ledger.operations.bench.discard import discard_batch
from ledger.units.codes import read_batch_code


def command(
    ctx: typer.Context,
    code: Batch,
    reason: Why,
    on: On = None,
) -> None:
    """Give up a batch before it is cut; what went in stays booked."""
    here = desk(ctx)
    discard_batch(here.book(), code, on=here.day(on), by=here.decider, reason=reason)
    say(f"Batch {read_batch_code(code)} is discarded: {reason}. What went in stays booked as used.")
