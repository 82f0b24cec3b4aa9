"""soapledger complaint close."""

from typing import Annotated

import typer

from ledger.cli.complaint.words import Number, read_number
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say, say_wrapped
from ledger.operations.complaint.complaints import Noted, close_complaint
from ledger.rows.complaint import complaint


def command(
    ctx: typer.Context,
    number: Number,
    ending: Annotated[str, typer.Argument(help="How it ended, in quotes; no names, no health.")],
    on: On = None,
) -> None:
    """Close a complaint, e.g. complaint close 3 "bar replaced, formula kept"; a note opens it again."""
    here = desk(ctx)
    which = read_number(number)
    close_complaint(here.book(), which, Noted(here.day(on), here.who, ending))
    say(f"Complaint {which} is closed; a note would open it again.")
    if complaint(here.rows(), which).serious is None:
        say_wrapped(
            f"Nobody decided how serious it is: soapledger complaint note {which} WORDS --serious no --decided-by NAME"
        )
