"""soapledger check."""

from dataclasses import asdict
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.keep.words import how_they_stand
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say, say_wrapped
from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.operations.keep.check import check
from ledger.storage.compared import compared


def command(
    ctx: typer.Context,
    against: Annotated[Path | None, typer.Option("--against", help="Compare with another copy.")] = None,
    json: Json = False,
) -> None:
    """Prove that nothing in the ledger was changed or lost, or added behind its back."""
    here = desk(ctx)
    rows = here.rows()
    if against and not against.is_file():
        raise BadInput(f"There is no file {against} to compare with.")
    other = compared(here.path, against) if against else None
    verdict = check(rows)
    if json:
        out_json({**asdict(verdict), "against": other} if other else verdict)
    elif not verdict.findings:
        say(f"{count(verdict.entries, 'entry', 'entries')} checked; nothing is wrong.")
        say(f"The last digest is {verdict.head[:16]}…; written down elsewhere, it seals all that came before.")
    words = how_they_stand(other, here.path, against) if other and against else ""
    apart = other is not None and other.kinship in ("they part", "no relation", "unreadable")
    if words and not json and (not apart or verdict.findings):
        say_wrapped(words)
    if verdict.findings:
        lines = "\n".join(f"  {one.what}." for one in verdict.findings)
        raise DamagedLedger(
            f"{count(len(verdict.findings), 'thing is', 'things are')} wrong in {here.path}:\n{lines}\n"
            "Keep this file as it is, and go back to your last backup."
        )
    if apart:
        raise Refused(words)
