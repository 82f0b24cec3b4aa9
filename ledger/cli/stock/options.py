"""What the commands of a lot take."""

from typing import Annotated

import typer

Codes = Annotated[list[str], typer.Argument(help="Lot codes, e.g. L41-5; for bars the batch code.")]


Code = Annotated[str, typer.Argument(help="The lot code, e.g. L41-5; for bars the batch code.")]


Reason = Annotated[str | None, typer.Option("--reason", help="Why.")]


At = Annotated[str | None, typer.Option("--at", help="The place (the workshop).")]
