"""What is ticked and read at the bench, beside the numbered lines, in the order of work."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import NamedTuple, TypeVar

from ledger.domain.recipe.recipe import AFTER_THE_COOK, AT_TRACE, IN_THE_FATS, WITH_THE_LYE, OwnStep
from ledger.domain.tools.limits import Outside, beyond
from ledger.domain.tools.readings import COOK, MIX, POUR, READINGS, SET, START, Figure, Work, between
from ledger.units.words import Process, Units

One = TypeVar("One")

# The trade's words for what is seen in a batch, ticked rather than written out.
SEEN = (
    "gel", "partial gel", "no gel", "overheating", "cracks", "seizing", "ricing", "false trace", "soda ash",
    "rancid spots",
)  # fmt: skip

_ORDER = (START, IN_THE_FATS, WITH_THE_LYE, MIX, AT_TRACE, COOK, AFTER_THE_COOK, POUR, SET, "packing")

# What is read once what she does at that time is done: 1 before a second stage of the cook, 2 after all of it.
_AFTER_HERS = {"cook end": 1, "emulsion": 2, "trace": 2, "pot after cook": 2, "fragrance temperature": 2}


class Step(NamedTuple):
    """One thing to tick or to read; its letter stands on the worksheet and at the prompt alike."""

    letter: str
    what: str  # the reading it is booked as
    label: str
    when: str
    note: str | None = None
    mark: str | None = None  # of a step of her own: what tells its answer from others booked alike
    own: bool = False  # in the words of the recipe


def steps(
    process: Process, *, makes_lye: bool, gives_bars: bool, own: Sequence[OwnStep] = (), units: Units = "metric"
) -> tuple[Step, ...]:
    """The steps of a process, lettered in the order of work; the words are those of `Work`.

    A step of her `own` that reads what is read anyway stands in its place. Of a batch that divides, what is done at
    the pour and after it stands with each portion.
    """
    work = Work(process, makes_lye, gives_bars)
    mine = [one for one in own if (gives_bars if one.when in (POUR, SET) else makes_lye)]
    taken = {one.reading for one in mine}
    usual = [
        Step("", one.what, one.label, one.when or "", one.note)
        for one in READINGS.values()
        if one.asked_of(work) and one.what not in taken
    ]
    hers = [Step("", one.what, one.text, one.when, step_note(one, units), one.mark, own=True) for one in mine]
    second = next((place for place, one in enumerate(hers) if one.what.startswith("second cook")), len(hers))
    early, ends, late = ([one for one in usual if _AFTER_HERS.get(one.what, 0) == place] for place in range(3))
    found = [*early, *hers[:second], *ends, *hers[second:], *late]
    return tuple(
        one._replace(letter=_letters(place)) for place, one in enumerate(in_order(found, lambda one: one.when))
    )


def _letters(place: int) -> str:
    """a to z, then aa, ab and so on."""
    first, last = divmod(place, 26)
    return (chr(ord("a") + first - 1) if first else "") + chr(ord("a") + last)


def step_note(step: OwnStep, units: Units) -> str | None:
    """What is read at it, and between what it should lie; None for a tick."""
    if step.reading is None:
        return None
    within = step_limit(step, units)
    return f"{step.reading}, {within}" if within else step.reading


def step_limit(step: OwnStep, units: Units) -> str | None:
    """Between what its reading should lie, in words; None where it sets no limit."""
    answer = READINGS[step.what].answer
    if not isinstance(answer, Figure):
        return None
    return between(answer, step.least, step.most, units)


def outside_steps(
    own: Iterable[OwnStep], last: Mapping[tuple[str, str | None], int], units: Units
) -> tuple[Outside, ...]:
    """Every step whose reading lies outside its limits; `last` is what was read, a figure at its limit is inside."""
    found = []
    for one in own:
        answer, value = READINGS[one.what].answer, last.get((one.what, one.mark))
        if value is None or not isinstance(answer, Figure):
            continue
        if off := beyond(answer, value, one.least, one.most, units):
            found.append(Outside(f"step {one.number}", f"{one.text}: {one.reading} {off}"))
    return tuple(found)


def in_order(things: Iterable[One], when: Callable[[One], str]) -> list[One]:
    """Steps and weighed lines together in the order of work; a line of another stage comes after the start."""
    places = {stage: place for place, stage in enumerate(_ORDER)}
    return sorted(things, key=lambda one: places.get(when(one), 1))
