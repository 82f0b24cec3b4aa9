"""soapledger supplier erase."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Which, Yes
from ledger.cli.people.erasing import Also, Leave, NameToo, Paper, Reason, erase_shown
from ledger.rows.people import details_held
from ledger.views.people.erasable import Sought, erasable_supplier


def command(
    ctx: typer.Context,
    which: Which,
    reason: Reason,
    also: Also = None,
    attachment: Paper = None,
    leave: Leave = None,
    name_too: NameToo = False,
    yes: Yes = False,
) -> None:
    """Erase whom to ask for at a supplier, with phone, email and address, for good; a firm's name stays."""
    here = desk(ctx)
    held = details_held(here.rows(), which, "supplier")
    sought = Sought(tuple(also or ()), tuple(attachment or ()), name_too)
    erase_shown(
        here,
        lambda rows: erasable_supplier(rows, which, sought),
        question=f"Erase whom to ask for at {held.name} for good? When a lot of theirs is bad, nobody could be rung.",
        says=f"Whom to ask for at supplier {held.code} is erased; the firm and its deliveries remain.",
        reason=reason,
        leave=leave,
        yes=yes,
    )
