"""soapledger attachment save."""

import hashlib
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import say
from ledger.documents.kit.files import write_file
from ledger.errors import Refused
from ledger.rows.kept import content_of


def command(
    ctx: typer.Context,
    sha: Annotated[str, typer.Argument(help="How its SHA-256 begins.")],
    output: Annotated[Path, typer.Option("-o", help="The file to save it in.")],
    force: Annotated[bool, typer.Option("--force", help="Overwrite that file.")] = False,
) -> None:
    """Save one kept paper as a file, e.g. soapledger attachment save 3fa91c -o coa.pdf."""
    kept = content_of(desk(ctx).rows(), sha)
    write_file(output, kept.content, force=force)
    if hashlib.sha256(output.read_bytes()).hexdigest() != kept.sha256:
        raise Refused(f"{output} does not read back as it was written; save it in another place.")
    say(f"Saved {output}, the same as it was kept (SHA-256 {kept.sha256[:12]}).")
