"""soapledger attachments."""

from shlex import quote
from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest
from ledger.views.record.attachments import attachments as kept_with
from ledger.views.record.attachments import subject_meant


def command(
    ctx: typer.Context,
    code: Annotated[str | None, typer.Argument(help="A lot code, a batch code, a recipe or a material.")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List the papers kept with something, e.g. soapledger attachments L41-5."""
    number = asked_for(last, every)
    here = desk(ctx)
    subject = subject_meant(here.rows(), code) if code else None
    papers = kept_with(here.rows(), subject)
    left = [one for one in papers if one.bytes]
    where = f" with {subject.noun} {subject.code}" if subject else ""
    shown, more = latest(papers, number)
    words = Listed(
        f"{count(len(papers), 'paper')} kept{where}.",
        ("with", "name", "what it is", "bytes", "SHA-256"),
        ((f"{one.noun} {one.code}", one.name, one.kind, str(one.bytes or "erased"), one.sha256[:12]) for one in shown),
        right=(3,),
        none=f"No paper is kept{where} yet.\nNext: soapledger attach FILE --to {subject.code if subject else 'CODE'}",
        then=f"To save one: soapledger attachment save {left[0].sha256[:12]} -o FILE" if left else "",
        earlier=here.typed(f"attachments{f' {quote(code)}' if code else ''} --all") if more else "",
    )
    answer(shown, json, words)
