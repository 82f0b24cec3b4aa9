"""soapledger backup."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.keep.words import damage
from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import count, say
from ledger.errors import DamagedLedger
from ledger.fileformat import is_ledger
from ledger.operations.keep.backup import keep_copy


def command(
    ctx: typer.Context,
    target: Annotated[Path, typer.Argument(help="Where to put the copy, e.g. on a memory stick.")],
    force: Annotated[bool, typer.Option("--force", help="Overwrite an older copy.")] = False,
) -> None:
    """Copy the whole ledger to one file and check the copy, e.g. soapledger backup /media/stick/soap.db."""
    here = desk(ctx)
    try:
        here.rows()  # an older ledger is brought up to date first
    except DamagedLedger:
        if not is_ledger(here.path):
            raise
    verdict = keep_copy(here.path, target, overwrite=force)
    if verdict.findings:
        say(f"{target} holds all that is in {here.path}, as it is.")
        raise DamagedLedger(damage(verdict, here.path, ()))
    say(f"{target} holds {count(verdict.entries, 'entry', 'entries')}, checked.")
    say(f"To look into it: soapledger --ledger {target} history")
