"""What a named person has to decide before work goes on, and a deviation with what was decided of it."""

from collections.abc import Collection, Iterable
from datetime import date
from typing import NamedTuple

from ledger.units.words import EVERY, DeviationVerdict, Subject


class Doubt(NamedTuple):
    """One doubt as printed, with the particulars that a decision about it covers: the words, unless it has others."""

    subject: Subject
    words: str
    of: tuple[str, ...] = ()

    @property
    def particulars(self) -> tuple[str, ...]:
        """What is kept of it when it is decided, and looked for when it comes up again."""
        return self.of or (self.words,)


def list_words(doubts: Iterable[Doubt]) -> str:
    """Doubts one after the other, as a refusal and the reason of a decision print them."""
    return "; ".join(one.words for one in doubts)


class Deviation(NamedTuple):
    """One deviation, numbered within its batch, with the latest decision; none yet: it is open."""

    id: int
    number: int
    on: date
    subject: str
    found: str
    done: str | None
    verdict: DeviationVerdict | None
    decided_on: date | None
    by: str | None
    reason: str | None
    entry: int

    @property
    def open(self) -> bool:
        """Whether nobody has decided yet."""
        return self.verdict is None


def undecided(doubts: Iterable[Doubt], decided: Collection[tuple[str, str]]) -> tuple[Doubt, ...]:
    """The doubts of which something is not among what was decided: (subject, particular) of each decision's doubts."""
    known = frozenset(decided)
    return tuple(
        one
        for one in doubts
        if (one.subject, EVERY) not in known and not known.issuperset((one.subject, of) for of in one.particulars)
    )
