"""soapledger lot hold."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.stock.lots import decide
from ledger.cli.stock.options import Codes, Reason


def command(ctx: typer.Context, codes: Codes, on: On = None, reason: Reason = None) -> None:
    """Put lots, or the bars of a batch, on hold: nothing more is used or leaves until decided."""
    decide(desk(ctx), codes, "on hold", on, reason)
