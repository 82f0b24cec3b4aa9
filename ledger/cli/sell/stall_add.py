"""soapledger stall add."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import say_next
from ledger.cli.sell.stalls import Name
from ledger.operations.sell.add_stall import add_stall


def command(ctx: typer.Context, name: Name) -> None:
    """Add a stall, e.g. soapledger stall add "Saturday market"."""
    code = add_stall(desk(ctx).book(), name)
    say_next(f"{name} is added as '{code}'. Next: soapledger stall out {code} BATCH=NUMBER")
