"""soapledger undo."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.kit.show import confirm, say
from ledger.operations.keep.undo import may_be_taken_back, undo
from ledger.rows.history import last_entry
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    entry: Annotated[str | None, typer.Argument(help="The number of the entry; the last one when left out.")] = None,
    yes: Yes = False,
) -> None:
    """Take back an entry by another one; both stay to be read, e.g. soapledger undo 41."""
    here = desk(ctx)
    number = parse_pieces(entry, what="the entry") if entry else last_entry(here.rows())
    confirm(f"Take back entry {number} ({may_be_taken_back(here.rows(), number).rstrip('.')})?", yes)
    undone = undo(here.book(), number)
    say(f"Entry {undone.entry} is taken back: {undone.said}")
