"""A list that grows for ever shows its last fifty, and says how to see more."""

from collections.abc import Callable, Sequence
from typing import Annotated, TypeVar

import typer

from ledger.errors import BadInput
from ledger.units.quantity import parse_pieces

WINDOW = 50

Last = Annotated[str | None, typer.Option("--last", help="Only the last so many (50).")]
Every = Annotated[bool, typer.Option("--all", help="All of them.")]

One = TypeVar("One")


def asked_for(last: str | None, every: bool) -> int | None:
    """How many of the latest are shown; None for all. Raises BadInput for a number beside --all, or no number."""
    if last and every:
        raise BadInput("--last and --all say different things; leave one of them out.")
    if every:
        return None
    number = parse_pieces(last, what="the number of the latest to show") if last else WINDOW
    if not number:
        raise BadInput("--last takes a number above zero, such as 10.")
    return number


def one_more(number: int | None) -> int | None:
    """How many to read, so that it is known whether there are more."""
    return None if number is None else number + 1


def the_last(counted: str, more: bool) -> str:
    """What is shown, in words: "50 entries", or "The last 50 entries" and "The last entry" where there are more."""
    return f"The last {counted.removeprefix('1 ')}" if more else counted


def latest(
    found: Sequence[One], number: int | None, *, always: Callable[[One], bool] = lambda _: False
) -> tuple[Sequence[One], bool]:
    """What of it is shown, and whether earlier ones are left out; never one that must not drop out of sight."""
    others = [place for place, one in enumerate(found) if not always(one)]
    if number is None or len(others) <= number:
        return found, False
    left = {*others[: len(others) - number]}
    return tuple(one for place, one in enumerate(found) if place not in left), True
