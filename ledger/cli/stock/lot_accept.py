"""soapledger lot accept."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.stock.lots import decide
from ledger.cli.stock.options import Codes, Reason


def command(ctx: typer.Context, codes: Codes, on: On = None, reason: Reason = None) -> None:
    """Accept lots that were looked at, so that they may go into a batch, e.g. soapledger lot accept L41-5."""
    decide(desk(ctx), codes, "accepted", on, reason)
