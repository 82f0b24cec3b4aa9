"""soapledger supplier: who sells her materials, and her own garden."""

from typing import Annotated

import typer

Contact = Annotated[str | None, typer.Option("--contact", help="Whom to ask for.")]
