"""soapledger restore."""

import shlex
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk, now
from ledger.cli.kit.show import count, say, say_wrapped
from ledger.operations.keep.restore import Restored, restore

_SHOWN = 50  # as in every other list that grows


def command(
    ctx: typer.Context,
    source: Annotated[Path, typer.Argument(help="A copy of the ledger, or a folder of archive.", metavar="COPY")],
    target: Annotated[Path | None, typer.Argument(help="A new file; the ledger's own name where it is gone.")] = None,
) -> None:
    """Make the ledger again from a copy, in a new file, e.g. soapledger restore /media/stick/soap.db new.db."""
    here = desk(ctx)
    new = target or here.path
    done = restore(source, new, present=here.path, now=now)
    say(f"{new} holds {count(done.entries, 'entry', 'entries')}, checked.")
    if done.last:
        say_wrapped(f"The last is entry {done.last.entry}: {done.last.said}")
    if new != here.path:
        _say_lost(done, here.path)
    say(f"To look into it: soapledger --ledger {shlex.quote(str(new))} history")


def _say_lost(done: Restored, present: Path) -> None:
    if done.lost is None:
        say_wrapped(f"What was written since is not known: {present} cannot be read, or does not go on from this copy.")
    elif not done.lost:
        say(f"{present} holds nothing that it lacks.")
    else:
        say(f"{present} goes on from there; {count(len(done.lost), 'entry is', 'entries are')} not in this copy:")
        for one in done.lost[:_SHOWN]:
            say_wrapped(one.said, first=f"  {one.entry}  ", indent="      ")
        if len(done.lost) > _SHOWN:
            where = shlex.quote(str(present))
            say(f"  and {len(done.lost) - _SHOWN} more; see: soapledger --ledger {where} history --all")
