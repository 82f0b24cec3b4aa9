"""The paper a document is printed on."""

from typing import Annotated

import typer

from ledger.errors import BadInput

PAPER = Annotated[str, typer.Option("--paper", help="a4 or letter.")]


def paper_size(text: str) -> str:
    """The paper as the documents name it. Raises BadInput."""
    sizes = {"a4": "A4", "letter": "Letter"}
    if text.casefold() not in sizes:
        raise BadInput(f"'{text}' is not a paper known here; write --paper a4 or --paper letter.")
    return sizes[text.casefold()]
