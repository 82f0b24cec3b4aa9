"""soapledger attach: keeps papers and pictures in the ledger."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import say
from ledger.errors import BadInput


def command(
    ctx: typer.Context,
    file: Annotated[Path, typer.Argument(help="The paper or picture.")],
    to: Annotated[str, typer.Option("--to", help="A lot code, a batch code or a material.")],
    kind: Annotated[str, typer.Option("--kind", help="What it is, e.g. CoA, safety sheet, photograph.")] = "paper",
) -> None:
    """Keep a certificate, safety sheet or photograph inside the ledger, beside what it vouches for."""
    from ledger.operations.attach import attach

    try:
        content = file.read_bytes()
    except OSError as error:
        raise BadInput(f"{file} cannot be read ({error.strerror}).") from None
    digest = attach(desk(ctx).book(), content, name=file.name, kind=kind, to=to)
    say(f"{file.name} is kept with {to} (SHA-256 {digest[:16]}…).")
