"""What the commands of a stall take alike."""

from typing import Annotated

import typer

Name = Annotated[str, typer.Argument(help="The stall's name.")]
