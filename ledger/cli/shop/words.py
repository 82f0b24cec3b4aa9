"""What the commands of shops and promises take and say alike."""

from datetime import date, timedelta
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.errors import BadInput
from ledger.units.dates import parse_date
from ledger.units.quantity import parse_pieces

THINGS = Annotated[
    list[str], typer.Argument(help="Products or batches and numbers, e.g. rosemary=12 26-118-0=6.", metavar="WHAT=N")
]
Number = Annotated[str, typer.Argument(help="The number of the order, e.g. 3.", metavar="NUMBER")]
Shop = Annotated[str, typer.Argument(help="The customer: short name or name.", metavar="CUSTOMER")]


def read_number(text: str, noun: str) -> int:
    """The number of an order, a sale or an invoice, with or without its noun. Raises BadInput."""
    plain = text.strip().casefold().removeprefix(noun).strip()
    number = parse_pieces(plain, what=f"the number of the {noun}")
    if number > 2**62:
        raise BadInput(f"There is no {noun} {plain}.")
    return number


def due_day(here: Desk, text: str) -> date:
    """The day something is due: a date, today, tomorrow, or the next such weekday. Raises BadInput."""
    plain = text.strip().casefold()
    if plain in ("today", "tomorrow"):
        return here.today + timedelta(plain == "tomorrow")
    week = 6 if plain.isalpha() and plain != "yesterday" else 0
    return parse_date(text, today=here.today + timedelta(week), what="the day it is due")


def read_changes(texts: list[str]) -> dict[str, int]:
    """Products or batches with how many more (+4) or fewer (-4) bars. Raises BadInput."""
    found: dict[str, int] = {}
    for text in texts:
        what, separator, number = (part.strip() for part in text.partition("="))
        if not separator or number[:1] not in ("+", "-", "−"):
            raise BadInput(f"By how many? Write it like {what}=+4 or {what}=-4.")
        if what in found:
            raise BadInput(f"'{what}' stands twice; write one number for it.")
        found[what] = parse_pieces(number[1:], what=f"the number of bars of {what}") * (1 if number[0] == "+" else -1)
    return found
