"""soapledger backup."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import count, say
from ledger.operations.keep.backup import keep_copy


def command(
    ctx: typer.Context,
    target: Annotated[Path, typer.Argument(help="Where to put the copy, e.g. on a memory stick.")],
    force: Annotated[bool, typer.Option("--force", help="Overwrite an older copy.")] = False,
) -> None:
    """Copy the whole ledger to one file and prove the copy sound, e.g. soapledger backup /media/stick/soap.db."""
    here = desk(ctx)
    here.rows()  # an older ledger is brought up to date first
    verdict = keep_copy(here.path, target, overwrite=force)
    say(f"{target} holds {count(verdict.entries, 'entry', 'entries')}, checked.")
    say(f"To look into it: soapledger --ledger {target} history")
