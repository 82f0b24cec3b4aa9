"""soapledger backup."""

import os
import shlex
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.keep.words import damage
from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import count, say, warn
from ledger.domain.keep.copies import DAYS, MONTHS, WEEKS
from ledger.errors import BadInput, DamagedLedger
from ledger.fileformat import is_ledger
from ledger.operations.keep.backup import DayCopy, keep_copy, keep_day_copy


def command(
    ctx: typer.Context,
    target: Annotated[
        str, typer.Argument(help="Where to put the copy: a file, or a folder that keeps one for each day.")
    ],
    force: Annotated[bool, typer.Option("--force", help="Overwrite an older copy.")] = False,
) -> None:
    """Copy the whole ledger and check the copy, e.g. soapledger backup /media/stick."""
    here, place = desk(ctx), Path(target)
    if target.endswith(("/", os.sep)) and not place.is_dir():
        raise BadInput(f"There is no folder {target}; make it or put the stick in, then do it again.")
    try:
        here.rows()  # an older ledger is brought up to date first
    except DamagedLedger:
        if not is_ledger(here.path):
            raise
    if place.is_dir():
        done = keep_day_copy(here.path, place, today=here.today)
        copy, verdict = done.path, done.verdict
    else:
        done, copy, verdict = None, place, keep_copy(here.path, place, overwrite=force)
    if verdict.findings:
        say(f"{copy} holds all that is in {here.path}, as it is.")
        raise DamagedLedger(damage(verdict, here.path, ()))
    say(f"{copy} holds {count(verdict.entries, 'entry', 'entries')}, checked.")
    if done:
        _of_the_day(done)
    else:
        say(f"To look into it: soapledger --ledger {shlex.quote(str(copy))} history")


def _of_the_day(done: DayCopy) -> None:
    for path in done.removed:
        say(f"Removed {path.name}.")
    if done.removed:
        say(f"The last of {DAYS} days, {WEEKS} weeks and {MONTHS} months is kept.")
    for path in done.stuck:
        warn(f"{path.name} could not be removed.")
    say(f"If the ledger is ever lost: soapledger restore {shlex.quote(str(done.path))} NEW_FILE")
