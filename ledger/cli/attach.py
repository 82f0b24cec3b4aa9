"""soapledger attach, attachments and attachment: papers and pictures kept in the ledger."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import count, out_json, say, table
from ledger.errors import BadInput, Refused

app = typer.Typer(help="One paper kept in the ledger: save.")


def attach(
    ctx: typer.Context,
    file: Annotated[Path, typer.Argument(help="The paper or picture.")],
    to: Annotated[str, typer.Option("--to", help="A lot code, a batch code, a recipe or a material.")],
    kind: Annotated[str, typer.Option("--kind", help="What it is, e.g. CoA, safety sheet, photograph.")] = "paper",
) -> None:
    """Keep a certificate, safety sheet or photograph, e.g. soapledger attach coa.pdf --to L41-5 --kind CoA."""
    from ledger.operations.attach import attach as keep

    try:
        content = file.read_bytes()
    except OSError as error:
        raise BadInput(f"{file} cannot be read ({error.strerror}).") from None
    kept = keep(desk(ctx).book(), content, name=file.name, kind=kind, to=to)
    say(f"{file.name} is kept with {kept.subject.noun} {kept.subject.code} (SHA-256 {kept.sha256[:12]}).")


def attachments(
    ctx: typer.Context,
    code: Annotated[str | None, typer.Argument(help="A lot code, a batch code, a recipe or a material.")] = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """List the papers kept with something, e.g. soapledger attachments L41-5."""
    from ledger.views.attachments import attachments as kept_with
    from ledger.views.attachments import subject_meant

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
        [(f"{one.noun} {one.code}", one.name, one.kind, str(one.bytes), one.sha256[:12]) for one in papers],
        right=(3,),
    )
    say(f"To save one: soapledger attachment save {papers[0].sha256[:12]} -o FILE")


@app.command("save")
def save(
    ctx: typer.Context,
    sha: Annotated[str, typer.Argument(help="How its SHA-256 begins.")],
    output: Annotated[Path, typer.Option("-o", help="The file to save it in.")],
    force: Annotated[bool, typer.Option("--force", help="Overwrite that file.")] = False,
) -> None:
    """Save one kept paper as a file, e.g. soapledger attachment save 3fa91c -o coa.pdf."""
    import hashlib

    from ledger.documents.files import write_file
    from ledger.views.attachments import content_of

    kept = content_of(desk(ctx).rows(), sha)
    write_file(output, kept.content, force=force)
    if hashlib.sha256(output.read_bytes()).hexdigest() != kept.sha256:
        raise Refused(f"{output} does not read back as it was written; save it in another place.")
    say(f"Saved {output}, the same as it was kept (SHA-256 {kept.sha256[:12]}).")
