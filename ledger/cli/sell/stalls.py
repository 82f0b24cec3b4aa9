"""soapledger stall: a market day."""

from typing import Annotated

import typer

Name = Annotated[str, typer.Argument(help="The stall's name.")]
