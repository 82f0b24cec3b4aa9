"""What a named person has to decide before work goes on, what was decided already, and the recalls that were opened."""

import sqlite3
from datetime import date
from typing import NamedTuple

from ledger.domain.bench.decision import Deviation
from ledger.rows.opened import day, maybe_day
from ledger.units.words import RecallStepKind, Verdict


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


def verdicts(rows: sqlite3.Connection, lot_id: int) -> tuple[tuple[str, date], ...]:
    """What was decided about a lot and counts, with the day of each, the decision taken last at the end."""
    found = rows.execute('SELECT verdict, "on" FROM live_decision WHERE lot_id = ? ORDER BY id', (lot_id,))
    return tuple((row["verdict"], day(row["on"])) for row in found)


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


class RecordedDecision(NamedTuple):
    """One decision by a named person."""

    on: date
    what: str  # accepted, rejected, on hold, passed for packing, released, discarded
    subject: str
    by: str
    reason: str | None
    entry: int
    superseded: bool


def decisions_about(rows: sqlite3.Connection, batch_id: int, bars: int | None) -> tuple[RecordedDecision, ...]:
    """Every decision about a batch and its bars, as they were taken; a later one about the bars stands before."""
    found = rows.execute(
        """
        SELECT d."on", d.verdict, d.by, d.reason, d.entry_id, d.lot_id,
          EXISTS (SELECT 1 FROM live_decision x WHERE x.lot_id = d.lot_id AND x.id > d.id
                  AND NOT (d.verdict = 'passed' AND x.verdict = 'released')) AS superseded
        FROM live_decision d WHERE d.batch_id = ? OR d.lot_id = ? ORDER BY d.id
        """,
        (batch_id, bars),
    )
    return tuple(
        RecordedDecision(
            on=day(row["on"]),
            what="passed for packing" if row["verdict"] == "passed" else row["verdict"],
            subject="bars" if row["lot_id"] else "batch",
            by=row["by"],
            reason=row["reason"],
            entry=row["entry_id"],
            superseded=bool(row["superseded"]),
        )
        for row in found
    )


def open_deviations(rows: sqlite3.Connection, batch_id: int) -> tuple[Deviation, ...]:
    """Those nobody has decided yet."""
    return tuple(one for one in deviations(rows, batch_id) if one.open)


class LotDecision(NamedTuple):
    """One decision about a lot."""

    verdict: Verdict
    on: date


def last_decision(rows: sqlite3.Connection, lot_id: int) -> LotDecision | None:
    """The decision taken last about a lot, whatever its date; None before there is one."""
    row = rows.execute(
        'SELECT verdict, "on" FROM live_decision WHERE lot_id = ? ORDER BY id DESC LIMIT 1', (lot_id,)
    ).fetchone()
    return LotDecision(row["verdict"], day(row["on"])) if row else None


class LotDecided(NamedTuple):
    """One decision about a lot, with who took it and why."""

    on: date
    verdict: Verdict
    by: str
    reason: str | None
    entry: int


def decided_of(rows: sqlite3.Connection, lot_id: int) -> tuple[LotDecided, ...]:
    """Every decision about a lot that counts, as they were booked."""
    query = 'SELECT "on", verdict, by, reason, entry_id FROM live_decision WHERE lot_id = ? ORDER BY id'
    return tuple(LotDecided(day(row[0]), *row[1:]) for row in rows.execute(query, (lot_id,)))


class RecallStep(NamedTuple):
    """One thing that was done about a recall."""

    entry: int
    on: date
    by: str
    kind: RecallStepKind
    customer_id: int | None
    complaint: int | None
    whom: str | None  # the customer, the complaint, or as it was typed
    how: str | None
    bars: int | None
    words: str | None


class RecallClosed(NamedTuple):
    """How a recall ended."""

    entry: int
    on: date
    by: str
    conclusion: str
    unexplained: int
    reason: str | None


class RecallCard(NamedTuple):
    """One recall as it was opened, with what was done since; not its answer."""

    number: int
    entry: int
    on: date
    by: str
    question: str
    asked_at: int
    reason: str
    hazard: str | None  # the latest word on it
    found_by: str | None
    exercise: bool
    took_ms: int | None
    steps: tuple[RecallStep, ...] = ()
    closed: RecallClosed | None = None

    @property
    def name(self) -> str:
        """As people say it: R1."""
        return f"R{self.number}"

    def last(self, kind: RecallStepKind) -> RecallStep | None:
        """The latest step of a kind; it counts."""
        return next((one for one in reversed(self.steps) if one.kind == kind), None)


def recalls(rows: sqlite3.Connection, *, number: int | None = None) -> tuple[RecallCard, ...]:
    """Every recall that counts, oldest first; only the one of a number where told."""
    found = rows.execute(
        'SELECT id AS number, entry_id AS entry, "on", by, question, asked_at, reason, hazard, found_by, exercise, '
        "took_ms FROM live_recall WHERE :number IS NULL OR id = :number ORDER BY id",
        {"number": number},
    ).fetchall()
    cards = []
    for row in found:
        steps = rows.execute(
            """
            SELECT s.entry_id AS entry, s."on", s.by, s.kind, s.customer_id, s.complaint_id AS complaint,
                   coalesce(r.name, p.name, c.code, s.whom) AS whom, s.how, s.bars, s.words
            FROM live_recall_step s LEFT JOIN customer c ON c.id = s.customer_id
            LEFT JOIN live_customer_revision r
              ON r.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = c.id)
            LEFT JOIN personal_text p ON p.personal_id = r.personal_id
            WHERE s.recall_id = ? ORDER BY s."on", s.id
            """,
            (row["number"],),
        )
        end = rows.execute(
            'SELECT entry_id AS entry, "on", by, conclusion, unexplained, reason FROM live_recall_close '
            "WHERE recall_id = ? ORDER BY id DESC LIMIT 1",
            (row["number"],),
        ).fetchone()
        card = RecallCard(**{**dict(row), "on": day(row["on"]), "exercise": bool(row["exercise"])})
        done = tuple(RecallStep(**{**dict(one), "on": day(one["on"])}) for one in steps)
        cards.append(
            card._replace(
                hazard=next((one.words for one in reversed(done) if one.kind == "hazard"), card.hazard),
                steps=done,
                closed=RecallClosed(**{**dict(end), "on": day(end["on"])}) if end else None,
            )
        )
    return tuple(cards)


def lots_used(rows: sqlite3.Connection) -> tuple[str, ...]:
    """Our codes of the lots a supplier sent of which something went into a batch, oldest first."""
    found = rows.execute(
        "SELECT code FROM live_lot l WHERE supplier_id IS NOT NULL AND EXISTS "
        "(SELECT 1 FROM live_movement v WHERE v.lot_id = l.id AND v.kind = 'consumed') ORDER BY id"
    )
    return tuple(row[0] for row in found)
