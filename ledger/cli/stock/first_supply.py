"""When and to whom bars under labels of an earlier list were first supplied, as every door takes it."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.operations.release.first_supply import FirstSupplied
from ledger.units.dates import parse_date

First = Annotated[
    str | None,
    typer.Option("--first-supplied", help="Of bars under labels of an earlier list: when and to whom they first went."),
]


def first_supplied(here: Desk, text: str | None) -> FirstSupplied | None:
    """What was typed, as 'DAY; TO WHOM', with who says so. Raises BadInput."""
    if text is None:
        return None
    on, _, whom = (part.strip() for part in text.partition(";"))
    return FirstSupplied(parse_date(on, today=here.today, what="the day"), whom, here.decider)
