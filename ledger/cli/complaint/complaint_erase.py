"""soapledger complaint erase."""

import typer

from ledger.cli.complaint.words import Number, read_number
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.people.erasing import Also, Leave, Paper, Reason, erase_shown
from ledger.views.people.erasable import Sought, erasable_complaint


def command(
    ctx: typer.Context,
    number: Number,
    reason: Reason,
    also: Also = None,
    attachment: Paper = None,
    leave: Leave = None,
    yes: Yes = False,
) -> None:
    """Erase who reported it and what was said, e.g. complaint erase 3 --reason "asked by letter"."""
    which = read_number(number)
    sought = Sought(tuple(also or ()), tuple(attachment or ()))
    erase_shown(
        desk(ctx),
        lambda rows: erasable_complaint(rows, which, sought),
        question=f"Erase the personal details of complaint {which} for good?",
        says=f"The personal details of complaint {which} are erased; of what batch it was and when stays.",
        reason=reason,
        leave=leave,
        yes=yes,
    )
