"""soapledger check."""

from dataclasses import asdict
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.keep.words import NOT_LOOKED_AT, Answer, damage, looked_at, sealed, set_beside
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import say, say_wrapped
from ledger.errors import BadInput, DamagedLedger, Refused, StrangeSchema
from ledger.operations.keep.check import check, look_quickly, unheld
from ledger.rows.opened import open_rows
from ledger.storage.compared import compared
from ledger.units.seals import read_seal


def command(
    ctx: typer.Context,
    seal: Annotated[str | None, typer.Option("--seal", help="A seal kept on paper: does all up to it stand?")] = None,
    against: Annotated[Path | None, typer.Option("--against", help="Compare with another copy.")] = None,
    fast: Annotated[bool, typer.Option("--fast", help="Only the last entries and what is on hand.")] = False,
    json: Json = False,
) -> None:
    """Prove that nothing in the ledger was changed or lost, or added behind its back."""
    here = desk(ctx)
    try:
        rows = here.rows()
    except StrangeSchema:
        rows = open_rows(here.path, any_schema=True)  # to say what is strange in it
    kept = read_seal(seal) if seal else None
    if against and not against.is_file():
        raise BadInput(f"There is no file {against} to compare with.")
    other = compared(here.path, against) if against else None
    verdict = look_quickly(rows) if fast else check(rows)
    asked: list[Answer] = []
    if kept:
        asked.append(sealed(kept, unheld(rows, kept), verdict, fast=fast))
    if other and against:
        asked.append(set_beside(other, here.path, against))
    shown = answer({**asdict(verdict), **{one.key: one.facts for one in asked}}, json)
    if not shown and not verdict.findings:
        say(f"{looked_at(verdict, fast)}; nothing is wrong.")
        for one in asked:
            if one.good:
                say_wrapped(one.words)
        for remark in verdict.remarks:
            say_wrapped(f"Beside that: {remark}.")
        if fast:
            say_wrapped(NOT_LOOKED_AT)
        elif not kept:
            say("Without a seal this cannot see a ledger that was made anew as a whole. One to")
            say(f"keep elsewhere: {verdict.seal}")
    if verdict.findings:
        raise DamagedLedger(damage(verdict, here.path, asked))
    if bad := [one.words for one in asked if not one.good]:
        raise Refused("\n".join(bad))
