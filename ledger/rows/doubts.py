"""What a named person has to decide before work goes on, and what was decided already."""

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass

from ledger.units.words import EVERY, Subject


@dataclass(frozen=True)
class Doubt:
    """One doubt as printed, with the particulars that a decision about it covers: the words, unless it has others."""

    subject: Subject
    words: str
    of: tuple[str, ...] = ()

    @property
    def particulars(self) -> tuple[str, ...]:
        """What is kept of it when it is decided, and looked for when it comes up again."""
        return self.of or (self.words,)


def decided(
    rows: sqlite3.Connection, *, lot_id: int | None = None, batch_id: int | None = None
) -> frozenset[tuple[str, str]]:
    """(subject, particular) of every doubt that a decision about a lot or a batch was given for, and counts.

    A row that an upgrade wrote is of its decision, whatever becomes of the entry of the upgrade.
    """
    found = rows.execute(
        "SELECT o.subject, o.doubt FROM decision_doubt o JOIN live_decision d ON d.id = o.decision_id "
        "WHERE d.lot_id = ? OR d.batch_id = ?",
        (lot_id, batch_id),
    )
    return frozenset((row["subject"], row["doubt"]) for row in found)


def still_open(
    rows: sqlite3.Connection, doubts: Iterable[Doubt], *, lot_id: int | None = None, batch_id: int | None = None
) -> tuple[Doubt, ...]:
    """The doubts of which something is not among what was decided about the lot or the batch."""
    known = decided(rows, lot_id=lot_id, batch_id=batch_id)
    return tuple(
        one
        for one in doubts
        if (one.subject, EVERY) not in known and not known.issuperset((one.subject, of) for of in one.particulars)
    )


def list_words(doubts: Iterable[Doubt]) -> str:
    """Doubts one after the other, as a refusal and the reason of a decision print them."""
    return "; ".join(one.words for one in doubts)
