"""What the commands of a supplier take alike."""

from typing import Annotated

import typer

Contact = Annotated[str | None, typer.Option("--contact", help="Whom to ask for.")]
