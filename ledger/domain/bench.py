"""What is ticked and read at the bench, beside the numbered lines, in the order of work."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TypeVar

from ledger.domain.recipe import AFTER_THE_COOK, AT_TRACE, IN_THE_FATS, WITH_THE_LYE

One = TypeVar("One")

# The trade's words for what is seen in a batch, ticked rather than written out.
SEEN = (
    "gel", "partial gel", "no gel", "overheating", "cracks", "seizing", "ricing", "false trace", "soda ash",
    "rancid spots",
)  # fmt: skip

# Where in the work a step stands, among the stages of the lines that are weighed.
START, MIX, COOK, POUR, SET = "start", "mix", "cook", "pour", "set"
_ORDER = (START, IN_THE_FATS, WITH_THE_LYE, MIX, AT_TRACE, COOK, AFTER_THE_COOK, POUR, SET)


@dataclass(frozen=True)
class Step:
    """One thing to tick or to read; its letter stands on the worksheet and at the prompt alike."""

    letter: str
    what: str  # the reading it is booked as
    label: str
    when: str
    note: str | None = None


_START = (("clean", "Bench, tools and moulds clean", None), ("scale test", "Scale reads the test weight", None))
_POT = (("pot tare", "Empty pot", "the cooking pot, before anything goes in"),)
_MIX = (
    ("lye temperature", "Lye temperature", None),
    ("fats temperature", "Fats temperature", None),
    ("emulsion", "Emulsion after", None),
    ("trace", "Trace after", None),
)
_COOK = (
    ("pot before cook", "Pot with the dough", None),
    ("cook start", "Cook from", None),
    ("cook temperature", "Check in the cook", "more checks: write them below"),
    ("cook end", "Cook to", None),
    ("pot after cook", "Pot after the cook", None),
    ("fragrance temperature", "Before the fragrance goes in", None),
)
_POUR = (("poured", "Poured at", None), ("poured weight", "Weight in the mould", None))
_SET = (("unmoulded", "Unmoulded at", None), ("unmoulded weight", "Weight of the loaf", None))


def steps(process: str, *, makes_lye: bool, gives_bars: bool) -> tuple[Step, ...]:
    """The steps of a process, lettered in the order of work.

    `makes_lye` is False for a portion, whose fats and lye met in the batch it was divided from; `gives_bars` is False
    for a dough that is divided.
    """
    cooks = makes_lye and process == "hot"
    found = [(START, one) for one in (*_START, *(_POT if cooks else ()))]
    if makes_lye and process in ("cold", "hot"):
        found += [(MIX, one) for one in _MIX]
    if cooks:
        found += [(COOK, one) for one in _COOK]
    if gives_bars:
        found += [(POUR, one) for one in (_POUR if process != "rebatch" else _POUR[:1])]
        found += [(SET, one) for one in _SET]
    return tuple(
        Step(chr(ord("a") + place), what, label, when, note) for place, (when, (what, label, note)) in enumerate(found)
    )


def in_order(things: Iterable[One], when: Callable[[One], str]) -> list[One]:
    """Steps and weighed lines together in the order of work; a line of another stage comes after the start."""
    places = {stage: place for place, stage in enumerate(_ORDER)}
    return sorted(things, key=lambda one: places.get(when(one), 1))
