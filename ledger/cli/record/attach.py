"""soapledger attach."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import say
from ledger.operations.record.attach import attach as keep
from ledger.units.given import MOST_PAPER, read_given


def command(
    ctx: typer.Context,
    file: Annotated[Path, typer.Argument(help=f"The paper or picture, up to {MOST_PAPER // 1_000_000} MB.")],
    to: Annotated[str, typer.Option("--to", metavar="CODE", help="A lot code, a batch code, a recipe or a material.")],
    kind: Annotated[str, typer.Option("--kind", help="What it is, e.g. CoA, safety sheet, photograph.")] = "paper",
) -> None:
    """Keep a certificate, safety sheet or photograph, e.g. soapledger attach coa.pdf --to L41-5 --kind CoA."""
    content = read_given(file)
    kept = keep(desk(ctx).book(), content, name=file.name, kind=kind, to=to)
    say(f"{file.name} is kept with {kept.subject.noun} {kept.subject.code} (SHA-256 {kept.sha256[:12]}).")
