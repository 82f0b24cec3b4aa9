"""The paper a document is printed on."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.documents.kit.files import drawn_with_entry
from ledger.errors import BadInput

PAPER = Annotated[str, typer.Option("--paper", help="a4 or letter.")]


def paper_size(text: str) -> str:
    """The paper as the documents name it. Raises BadInput."""
    sizes = {"a4": "A4", "letter": "Letter"}
    if text.casefold() not in sizes:
        raise BadInput(f"'{text}' is not a paper known here; write --paper a4 or --paper letter.")
    return sizes[text.casefold()]


@contextmanager
def paper_of_entry(here: Desk, output: Path | None, *, force: bool) -> Iterator[Callable[[bytes], None]]:
    """Takes the paper of what the block books, and gives it its name once that stands; raises as `drawn_with_entry`."""
    with drawn_with_entry(output, force=force) as put:
        yield put
    here.paper = output
