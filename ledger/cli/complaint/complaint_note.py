"""soapledger complaint note."""

from typing import Annotated

import typer

from ledger.cli.complaint.words import Batch, DecidedBy, Number, Serious, read_grave, read_number, say_duties
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say, say_wrapped
from ledger.operations.complaint.complaints import Noted, note_complaint
from ledger.rows.complaint import complaint


def command(
    ctx: typer.Context,
    number: Number,
    action: Annotated[str, typer.Argument(help="What was done, in quotes; no names, no health.")],
    serious: Serious = None,
    decided_by: DecidedBy = None,
    batch: Batch = None,
    on: On = None,
) -> None:
    """Note what was done about a complaint, e.g. complaint note 3 "rang, asked for the bar"."""
    here = desk(ctx)
    which, grave = read_number(number), read_grave(serious)
    was_closed = complaint(here.rows(), which).closed_on
    note_complaint(here.book(), which, Noted(here.day(on), here.who, action, grave, decided_by, batch))
    card = complaint(here.rows(), which)
    opened = " and is open again" if was_closed and not card.closed_on else ""
    say(f"Complaint {which} has the note{opened}.")
    say_wrapped("Others read a note: names and health go to --name and --health of complaint add.")
    if grave:
        say_duties(here)
    if batch:
        say(f"To stop these bars: soapledger lot hold {card.batch_code} --reason 'complaint {which}'")
        say(f"Where all its bars are, and whom to call: soapledger recall of --complaint {which}")
