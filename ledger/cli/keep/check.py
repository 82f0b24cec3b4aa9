"""soapledger check."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say
from ledger.errors import DamagedLedger
from ledger.operations.keep.check import check


def command(ctx: typer.Context, json: Json = False) -> None:
    """Prove that nothing in the ledger was changed or lost, or added behind its back."""
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
