"""What is ticked and read at the bench, beside the numbered lines, in the order of work."""

from collections.abc import Callable, Iterable
from typing import NamedTuple, TypeVar

from ledger.domain.recipe.recipe import AFTER_THE_COOK, AT_TRACE, IN_THE_FATS, WITH_THE_LYE
from ledger.domain.tools.readings import COOK, MIX, POUR, READINGS, SET, START, Work
from ledger.units.words import Process

One = TypeVar("One")

# The trade's words for what is seen in a batch, ticked rather than written out.
SEEN = (
    "gel", "partial gel", "no gel", "overheating", "cracks", "seizing", "ricing", "false trace", "soda ash",
    "rancid spots",
)  # fmt: skip

_ORDER = (START, IN_THE_FATS, WITH_THE_LYE, MIX, AT_TRACE, COOK, AFTER_THE_COOK, POUR, SET)


class Step(NamedTuple):
    """One thing to tick or to read; its letter stands on the worksheet and at the prompt alike."""

    letter: str
    what: str  # the reading it is booked as
    label: str
    when: str
    note: str | None = None


def steps(process: Process, *, makes_lye: bool, gives_bars: bool) -> tuple[Step, ...]:
    """The steps of a process, lettered in the order of work; the words are those of `Work`."""
    work = Work(process, makes_lye, gives_bars)
    asked = in_order((one for one in READINGS.values() if one.asked_of(work)), lambda one: one.when or "")
    return tuple(
        Step(chr(ord("a") + place), one.what, one.label, one.when or "", one.note) for place, one in enumerate(asked)
    )


def in_order(things: Iterable[One], when: Callable[[One], str]) -> list[One]:
    """Steps and weighed lines together in the order of work; a line of another stage comes after the start."""
    places = {stage: place for place, stage in enumerate(_ORDER)}
    return sorted(things, key=lambda one: places.get(when(one), 1))
