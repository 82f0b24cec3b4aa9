"""soapledger lot reject."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.stock.lots import decide
from ledger.cli.stock.options import Codes, Reason


def command(ctx: typer.Context, codes: Codes, on: On = None, reason: Reason = None) -> None:
    """Reject lots: they are kept apart and go nowhere but back or away."""
    decide(desk(ctx), codes, "rejected", on, reason)
