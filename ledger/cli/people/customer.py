"""What the commands of a customer take alike."""

from typing import Annotated

import typer

Which = Annotated[str, typer.Argument(help="The short name or name.", metavar="NAME")]
Contact = Annotated[str | None, typer.Option("--contact", help="Whom to ask for in a shop.")]
