"""soapledger attachments."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say, table
from ledger.views.record.attachments import attachments as kept_with
from ledger.views.record.attachments import subject_meant


def command(
    ctx: typer.Context,
    code: Annotated[str | None, typer.Argument(help="A lot code, a batch code, a recipe or a material.")] = None,
    json: Json = False,
) -> None:
    """List the papers kept with something, e.g. soapledger attachments L41-5."""
    here = desk(ctx)
    subject = subject_meant(here.rows(), code) if code else None
    papers = kept_with(here.rows(), subject)
    if json:
        out_json(papers)
        return
    where = f" with {subject.noun} {subject.code}" if subject else ""
    if not papers:
        say(f"No paper is kept{where} yet.")
        say(f"Next: soapledger attach FILE --to {subject.code if subject else 'CODE'}")
        return
    say(f"{count(len(papers), 'paper')} kept{where}.")
    table(
        ("with", "name", "what it is", "bytes", "SHA-256"),
        [(f"{one.noun} {one.code}", one.name, one.kind, str(one.bytes or "erased"), one.sha256[:12]) for one in papers],
        right=(3,),
    )
    if left := [one for one in papers if one.bytes]:
        say(f"To save one: soapledger attachment save {left[0].sha256[:12]} -o FILE")
