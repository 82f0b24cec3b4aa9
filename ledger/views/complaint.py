"""What customers reported."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput
from ledger.views.reading import day


@dataclass(frozen=True)
class ComplaintCard:
    """One complaint; erased details are gone from it."""

    id: int
    on: date
    batch_code: str | None
    product: str | None
    bought: str | None
    what: str
    serious: bool | None  # None: nobody decided yet
    decided_by: str | None
    person: str | None
    phone: str | None
    email: str | None
    health: str | None


_SQL = """
SELECT c.id, c."on", l.code AS batch_code, mr.name AS product, c.bought, c.what, c.serious, c.decided_by,
       t.name AS person, t.phone, t.email, t.health
FROM live_complaint c LEFT JOIN lot l ON l.id = c.lot_id
LEFT JOIN live_material_revision mr
  ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
LEFT JOIN personal_text t ON t.personal_id = c.personal_id
"""


def _card(row: sqlite3.Row) -> ComplaintCard:
    serious = None if row["serious"] is None else bool(row["serious"])
    return ComplaintCard(**{**dict(row), "on": day(row["on"]), "serious": serious})


def complaints(rows: sqlite3.Connection, *, batch_code: str | None = None) -> tuple[ComplaintCard, ...]:
    """Every complaint, oldest first; of one batch where told."""
    found = tuple(_card(row) for row in rows.execute(_SQL + ' ORDER BY c."on", c.id'))
    return tuple(one for one in found if batch_code in (None, one.batch_code))


def complaint(rows: sqlite3.Connection, number: int) -> ComplaintCard:
    """One complaint by its number. Raises BadInput."""
    row = rows.execute(_SQL + " WHERE c.id = ?", (number,)).fetchone()
    if row is None:
        raise BadInput(f"There is no complaint {number}; see: soapledger complaint list")
    return _card(row)
