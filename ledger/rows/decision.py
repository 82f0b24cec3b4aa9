"""What a named person has to decide before work goes on, and what was decided already."""

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from ledger.rows.opened import day, maybe_day
from ledger.units.words import EVERY, DeviationVerdict, Subject


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


@dataclass(frozen=True)
class Deviation:
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


def deviations(rows: sqlite3.Connection, batch_id: int) -> tuple[Deviation, ...]:
    """Every deviation of a batch, in the order they were found."""
    found = rows.execute(
        """
        SELECT v.id, v."on", v.subject, v.found, coalesce(d.done, v.done) AS done, d.verdict,
               d."on" AS decided_on, d.by, d.reason, v.entry_id AS entry
        FROM live_deviation v LEFT JOIN live_deviation_decision d
          ON d.id = (SELECT max(id) FROM live_deviation_decision WHERE deviation_id = v.id)
        WHERE v.batch_id = ? ORDER BY v.id
        """,
        (batch_id,),
    )
    return tuple(
        Deviation(**{**dict(row), "number": place, "on": day(row["on"]), "decided_on": maybe_day(row["decided_on"])})
        for place, row in enumerate(found, 1)
    )


def open_deviations(rows: sqlite3.Connection, batch_id: int) -> tuple[Deviation, ...]:
    """Those nobody has decided yet."""
    return tuple(one for one in deviations(rows, batch_id) if one.open)
