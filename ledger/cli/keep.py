"""soapledger check, undo, history and backup: keeping the ledger."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import confirm, count, out_json, say, table
from ledger.errors import DamagedLedger

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]


def check(ctx: typer.Context, json: Json = False) -> None:
    """Prove that nothing in the ledger was changed, lost or added behind its back."""
    from ledger.operations.check import check

    here = desk(ctx)
    verdict = check(here.rows())
    if json:
        out_json(verdict)
    elif not verdict.findings:
        say(f"{count(verdict.entries, 'entry', 'entries')} checked; nothing is wrong.")
        say(f"The last digest is {verdict.head[:16]}…; written down elsewhere, it seals all that came before.")
    if verdict.findings:
        lines = "\n".join(f"  {one.what}." for one in verdict.findings)
        raise DamagedLedger(
            f"{count(len(verdict.findings), 'thing is', 'things are')} wrong in {here.path}:\n{lines}\n"
            "Keep this file as it is, and go back to your last backup."
        )


def undo(
    ctx: typer.Context,
    entry: Annotated[str | None, typer.Argument(help="The number of the entry; the last one when left out.")] = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
) -> None:
    """Take back an entry by another one; both stay to be read, e.g. soapledger undo 41."""
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.undo import last_entry, undo

    here = desk(ctx)
    number = parse_pieces(entry, what="the entry") if entry else last_entry(here.rows())
    row = here.rows().execute("SELECT said FROM entry WHERE id = ?", (number,)).fetchone()
    if row:
        confirm(f"Take back entry {number} ({row['said']})?", yes)
    undone = undo(here.book(), number)
    say(f"Entry {undone.entry} is taken back: {undone.said}")


def history(
    ctx: typer.Context,
    last: Annotated[str | None, typer.Option("--last", help="Only the last so many.")] = None,
    json: Json = False,
) -> None:
    """List what was written, entry by entry, the latest last."""
    from ledger.domain.quantity import parse_pieces
    from ledger.views.history import history

    number = parse_pieces(last, what="the number of entries") if last else None
    here = desk(ctx)
    found = history(here.rows(), last=number)
    if json:
        out_json(found)
        return
    say(f"{count(len(found), 'entry', 'entries')}, the latest last.")
    table(
        ("entry", "written", "by", "what"),
        [
            (
                str(one.entry),
                here.clock(one.recorded_at),
                one.who,
                one.said + (f" [taken back by {one.undone_by}]" if one.undone_by else ""),
            )
            for one in found
        ],
        right=(0,),
    )


def backup(
    ctx: typer.Context,
    target: Annotated[Path, typer.Argument(help="Where to put the copy, e.g. on a memory stick.")],
    force: Annotated[bool, typer.Option("--force", help="Overwrite an older copy.")] = False,
) -> None:
    """Copy the whole ledger to one file and prove the copy sound, e.g. soapledger backup /media/stick/soap.db."""
    from ledger.operations.backup import keep_copy

    here = desk(ctx)
    here.rows()  # an older ledger is brought up to date first
    verdict = keep_copy(here.path, target, overwrite=force)
    say(f"{target} holds {count(verdict.entries, 'entry', 'entries')}, checked.")
    say(f"To look into it: soapledger --ledger {target} history")
