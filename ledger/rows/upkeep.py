"""Cleaning, training, approvals and self-inspections: what was done, and what is due."""

import sqlite3
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day, maybe_day
from ledger.units.signs import folded
from ledger.units.words import UpkeepKind


class UpkeepRow(NamedTuple):
    """One note of upkeep; `state` is due today, overdue, coming, done again since, or done."""

    id: int
    kind: UpkeepKind
    on: date
    by: str
    what: str
    next_on: date | None
    supplier_code: str | None
    supplier: str | None
    state: str

    @property
    def waits(self) -> bool:
        """Whether it is to be done now."""
        return self.state in ("due today", "overdue")


def upkeep_list(rows: sqlite3.Connection, on: date, *, kind: UpkeepKind | None = None) -> tuple[UpkeepRow, ...]:
    """What was noted up to a day: what is due first, the longest overdue before, then the latest first.

    The next of a kind makes the one before it done again: an approval by its supplier, cleaning and training
    by their words, a self-inspection by itself.
    """
    found = rows.execute(
        """
        SELECT u.id, u.kind, u."on", u.by, u.what, u.next_on, s.code AS supplier_code, r.name AS supplier
        FROM live_upkeep u LEFT JOIN live_supplier s ON s.id = u.supplier_id
        LEFT JOIN live_supplier_revision r
          ON r.id = (SELECT max(id) FROM live_supplier_revision WHERE supplier_id = s.id)
        WHERE u."on" <= ? AND ? IN (u.kind, '') ORDER BY u."on" DESC, u.id DESC
        """,
        (on.isoformat(), kind or ""),
    )
    noted, again = [], set()
    for row in found:
        words = folded(row["what"]) if row["kind"] in ("cleaning", "training") else row["supplier_code"]
        next_on = maybe_day(row["next_on"])
        state = "done again since" if (row["kind"], words) in again else _state(next_on, on)
        again.add((row["kind"], words))
        noted.append(UpkeepRow(**{**dict(row), "on": day(row["on"]), "next_on": next_on}, state=state))
    waiting = sorted((one for one in noted if one.waits), key=lambda one: (one.next_on or on, one.id))
    return (*waiting, *(one for one in noted if not one.waits))


def _state(next_on: date | None, on: date) -> str:
    if next_on is None:
        return "done"
    return "coming" if next_on > on else "due today" if next_on == on else "overdue"


def latest_approval(rows: sqlite3.Connection, supplier_code: str, on: date) -> UpkeepRow | None:
    """The latest approval of a supplier up to a day; None where there is none."""
    approvals = upkeep_list(rows, on, kind="supplier approval")
    return next(
        (one for one in approvals if one.supplier_code == supplier_code and one.state != "done again since"), None
    )
