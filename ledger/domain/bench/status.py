"""Where a batch and its bars stand, in the words of the trade, from what was written of them."""

from collections.abc import Callable
from typing import NamedTuple

from ledger.units.words import Process, Verdict

# What a process gives that is no bar made there: it is done once it is there, whatever is decided of its lot.
_GIVEN: dict[Process, str] = {
    "combine": "combined",
    "rework": "reworked",
    "infusion": "strained",
    "blend": "blended",
}


class Written(NamedTuple):
    """What was written of a batch that tells where it stands."""

    process: Process
    soap: bool  # it gives bars
    lines: int  # wrapping apart
    open_lines: int  # of those, neither weighed nor left out
    poured: bool
    yielded: bool  # its bars or its bulk are booked
    verdict: Verdict | None  # decided last about its lot
    discarded: bool


# The first that holds counts; so each asks only what those above it leave open.
STATES: tuple[tuple[Callable[[Written], bool], Callable[[Written], str]], ...] = (
    (lambda b: b.discarded, lambda _: "discarded"),
    (lambda b: b.yielded and b.process in _GIVEN, lambda b: _GIVEN[b.process]),
    (lambda b: b.yielded and not b.soap, lambda _: "divided"),
    (lambda b: b.yielded, lambda b: in_words(b.verdict or "curing")),
    (lambda b: b.open_lines == b.lines, lambda _: "planned"),
    (lambda b: b.open_lines > 0, lambda _: "being weighed"),
    (lambda b: b.process == "infusion", lambda _: "infusing"),
    (lambda b: b.poured, lambda _: "poured"),
    (lambda _: True, lambda _: "weighed"),
)


def status_of(batch: Written) -> str:
    """Where a batch stands."""
    return next(word(batch) for holds, word in STATES if holds(batch))


def in_words(lot_status: str) -> str:
    """The status of a lot as it is printed."""
    return "passed for packing" if lot_status == "passed" else lot_status
