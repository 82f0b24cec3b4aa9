"""What customers reported, what was done about it, and which bars it may be about."""

import json
import sqlite3
from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.opened import day, maybe_day
from ledger.rows.people import Text
from ledger.units.dates import show_date


class ComplaintStep(NamedTuple):
    """What was done on a day, and what a person decided then."""

    on: date
    by: str
    action: str
    serious: bool | None
    decided_by: str | None
    batch_code: str | None
    closes: bool


class ComplaintCard(NamedTuple):
    """One complaint as it stands by its latest steps; erased details are gone from it."""

    number: int
    on: date
    batch_code: str | None
    product: str | None
    bought: str | None
    bought_on: date | None
    place_id: int | None
    customer_id: int | None
    bought_at: str | None  # the stall, or the customer's short name
    what: str
    serious: bool | None  # None: nobody decided yet
    decided_by: str | None
    person: str | None
    phone: str | None
    email: str | None
    health: str | None
    steps: tuple[ComplaintStep, ...]
    closed_on: date | None

    @property
    def where(self) -> str:
        """Where and when it was bought, in words; empty when neither is known."""
        on = show_date(self.bought_on) if self.bought_on else None
        known = (self.bought, f"at {self.bought_at}" if self.bought_at else None, f"on {on}" if on else None)
        return " ".join(word for word in known if word)


class BatchComplaint(NamedTuple):
    """A complaint as a batch record shows it: nothing personal, nothing of health."""

    number: int
    on: date
    what: str
    serious: bool | None
    decided_by: str | None
    steps: tuple[ComplaintStep, ...]
    closed_on: date | None


_SQL = """
SELECT c.id AS number, c."on", c.bought, c.bought_on, c.place_id, c.customer_id, coalesce(p.name, u.code) AS bought_at,
       c.what, c.serious, c.decided_by, l.code AS batch_code, t.name AS person, t.phone, t.email, t.health
FROM live_complaint c LEFT JOIN lot l ON l.id = c.lot_id
LEFT JOIN place p ON p.id = c.place_id LEFT JOIN customer u ON u.id = c.customer_id
LEFT JOIN personal_text t ON t.personal_id = c.personal_id
"""


def _steps(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, tuple[ComplaintStep, ...]]:
    """What was done about complaints, by their numbers, in one statement."""
    found = rows.execute(
        'SELECT s.complaint_id, s."on", s.by, s.action, s.serious, s.decided_by, l.code AS batch_code, s.closes '
        "FROM live_complaint_step s LEFT JOIN lot l ON l.id = s.lot_id "
        "WHERE s.complaint_id IN (SELECT value FROM json_each(?)) "
        'ORDER BY s."on", s.id',
        (json.dumps(list(numbers)),),
    )
    steps: dict[int, tuple[ComplaintStep, ...]] = defaultdict(tuple)
    for row in found:
        step = {
            **dict(row),
            "on": day(row["on"]),
            "serious": None if row["serious"] is None else bool(row["serious"]),
            "closes": bool(row["closes"]),
        }
        steps[step.pop("complaint_id")] += (ComplaintStep(**step),)
    return steps


def _cards(rows: sqlite3.Connection, found: Sequence[sqlite3.Row]) -> list[ComplaintCard]:
    steps = _steps(rows, [row["number"] for row in found])
    cards = [_card(row, steps[row["number"]]) for row in found]
    products = _products(rows, {one.batch_code for one in cards if one.batch_code})
    return [one._replace(product=products.get(one.batch_code or "")) for one in cards]


def _card(row: sqlite3.Row, steps: tuple[ComplaintStep, ...]) -> ComplaintCard:
    serious = None if row["serious"] is None else bool(row["serious"])
    judged = [(serious, row["decided_by"]), *((one.serious, one.decided_by) for one in steps)]
    serious, decided_by = next((one for one in reversed(judged) if one[0] is not None), (None, None))
    named = [row["batch_code"], *(one.batch_code for one in steps)]
    batch_code = next((code for code in reversed(named) if code), None)
    return ComplaintCard(
        **{
            **dict(row),
            "on": day(row["on"]),
            "bought_on": maybe_day(row["bought_on"]),
            "serious": serious,
            "decided_by": decided_by,
            "batch_code": batch_code,
        },
        product=None,
        steps=steps,
        closed_on=steps[-1].on if steps and steps[-1].closes else None,
    )


def _products(rows: sqlite3.Connection, codes: Collection[str]) -> dict[str, str]:
    """What bars are, by the codes on them, in one statement."""
    found = rows.execute(
        "SELECT l.code, r.name FROM lot l JOIN live_material_revision r ON r.id = "
        "(SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id) "
        "WHERE l.code IN (SELECT value FROM json_each(?))",
        (json.dumps(list(codes)),),
    )
    return {row["code"]: row["name"] for row in found}


# The complaints that ever named one of some lots of bars, and those since a day that named none.
_ABOUT = """
WHERE c.id IN (
  SELECT id FROM live_complaint WHERE lot_id IN (SELECT value FROM json_each(:lots))
  UNION SELECT complaint_id FROM live_complaint_step WHERE lot_id IN (SELECT value FROM json_each(:lots))
  UNION SELECT id FROM live_complaint WHERE lot_id IS NULL AND "on" >= :since)
"""
_IN_ORDER = ' ORDER BY c."on", c.id'


def complaints(rows: sqlite3.Connection, *, batch_code: str | None = None) -> tuple[ComplaintCard, ...]:
    """Every complaint, oldest first; of one batch where told, by the latest word on its batch."""
    if batch_code is None:
        return tuple(_cards(rows, rows.execute(_SQL + _IN_ORDER).fetchall()))
    lots = [row[0] for row in rows.execute("SELECT id FROM lot WHERE code = ?", (batch_code,))]
    named = rows.execute(_SQL + _ABOUT + _IN_ORDER, {"lots": json.dumps(lots), "since": None}).fetchall()
    return tuple(one for one in _cards(rows, named) if one.batch_code == batch_code)


def complaints_about(rows: sqlite3.Connection, lots: Collection[int], since: date) -> list[ComplaintCard]:
    """The complaints that ever named one of these lots of bars, and those since a day that named none; oldest first."""
    asked = {"lots": json.dumps(list(lots)), "since": since.isoformat()}
    return _cards(rows, rows.execute(_SQL + _ABOUT + _IN_ORDER, asked).fetchall())


def complaints_of_batch(rows: sqlite3.Connection, code: str) -> tuple[BatchComplaint, ...]:
    """The complaints of one batch without who reported them, for its record."""
    return tuple(
        BatchComplaint(one.number, one.on, one.what, one.serious, one.decided_by, one.steps, one.closed_on)
        for one in complaints(rows, batch_code=code)
    )


def complaint(rows: sqlite3.Connection, number: int) -> ComplaintCard:
    """One complaint by its number. Raises BadInput."""
    row = rows.execute(_SQL + " WHERE c.id = ?", (number,)).fetchone()
    if row is None:
        raise BadInput(f"There is no complaint {number}; see: soapledger complaint list")
    return _cards(rows, [row])[0]


def complaint_kept(rows: sqlite3.Connection, number: int) -> None:
    """Raise BadInput for a number that no complaint has or had; one taken back keeps its rows."""
    if not rows.execute("SELECT 1 FROM complaint WHERE id = ?", (number,)).fetchone():
        raise BadInput(f"There is no complaint {number}; see: soapledger complaint list")


def complaints_of_customers(rows: sqlite3.Connection, ids: Sequence[int]) -> tuple[int, ...]:
    """The complaints about bars that were bought of some customers, or by them; taken back or not."""
    query = "SELECT id FROM complaint WHERE customer_id IN (SELECT value FROM json_each(?)) ORDER BY id"
    return tuple(row[0] for row in rows.execute(query, (json.dumps(list(ids)),)))


def words_of_complaints(rows: sqlite3.Connection, numbers: Collection[int]) -> Iterator[Text]:
    """What some complaints said, where it was bought, and what was done about them; taken back or not."""
    for table, column, key in (
        ("complaint", "what", "id"),
        ("complaint", "bought", "id"),
        ("complaint_step", "action", "complaint_id"),
    ):
        query = (
            f"SELECT entry_id, id, {column} FROM {table} WHERE {column} IS NOT NULL "
            f"AND {key} IN (SELECT value FROM json_each(?)) ORDER BY id"
        )
        for entry, row, text in rows.execute(query, (json.dumps(list(numbers)),)):
            yield Text(entry, table, row, column, text)


class CandidateBatch(NamedTuple):
    """Bars of one batch that could have been bought: how many left there and when, and how many stood there still."""

    code: str
    product: str
    bars: int
    first_on: date | None
    last_on: date | None
    standing: int


_LEFT = """
SELECT l.code, r.name AS product,
  -sum(CASE WHEN v.kind IN ('sold', 'dispatched', 'given') THEN v.quantity ELSE 0 END) AS bars,
  min(CASE WHEN v.kind IN ('sold', 'dispatched', 'given') THEN v."on" END) AS first_on,
  max(CASE WHEN v.kind IN ('sold', 'dispatched', 'given') THEN v."on" END) AS last_on,
  sum(CASE WHEN p.kind IN ('stall', 'consignment') THEN v.quantity ELSE 0 END) AS standing
FROM live_movement v JOIN live_lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id
JOIN place p ON p.id = v.place_id
JOIN live_material_revision r ON r.id = (
  SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
WHERE m.kind = 'soap' AND v."on" <= :until
  AND (:place IS NULL OR v.place_id = :place)
  AND (:customer IS NULL OR v.customer_id = :customer OR p.customer_id = :customer)
GROUP BY l.id HAVING bars > 0 OR standing > 0 ORDER BY last_on DESC, l.id
"""


def bars_that_left(
    rows: sqlite3.Connection, until: date, *, place_id: int | None, customer_id: int | None
) -> tuple[CandidateBatch, ...]:
    """The batches of which bars were supplied up to a day, or stood at a stall on it; the latest supplied first.

    Of one place or one customer where told.
    """
    found = rows.execute(_LEFT, {"until": until.isoformat(), "place": place_id, "customer": customer_id})
    return tuple(
        CandidateBatch(**{**dict(row), "first_on": maybe_day(row["first_on"]), "last_on": maybe_day(row["last_on"])})
        for row in found
    )
