"""soapledger complaint erase."""

from typing import Annotated

import typer

from ledger.cli.complaint.words import Number, read_number
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.kit.show import confirm, say
from ledger.operations.complaint.complaints import erase_complaint


def command(
    ctx: typer.Context,
    number: Number,
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. asked to be forgotten.")],
    yes: Yes = False,
) -> None:
    """Erase who reported it and what it did to them, e.g. complaint erase 3 --reason "asked by letter"."""
    which = read_number(number)
    confirm(f"Erase the personal details of complaint {which} for good?", yes)
    erase_complaint(desk(ctx).book(), which, reason=reason)
    say(f"The personal details of complaint {which} are erased; what happened stays.")
