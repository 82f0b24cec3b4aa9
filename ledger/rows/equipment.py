"""Scales, thermometers and pH meters with their checks, and upkeep: what was done, and what is due."""

import sqlite3
from datetime import date, timedelta
from typing import NamedTuple

from ledger.rows.opened import day, maybe_day
from ledger.units.names import named
from ledger.units.signs import folded
from ledger.units.words import EquipmentKind, ReadingUnit, UpkeepKind


class CheckRow(NamedTuple):
    """One try against something known; values in the unit of the item's kind."""

    id: int
    entry: int
    on: date
    by: str
    expected: int
    found: int
    tolerance: int
    passed: bool
    note: str | None


class EquipmentRow(NamedTuple):
    """One item as it stands; `why_due` says in words why it must be tried, None when it need not be."""

    id: int
    code: str
    kind: EquipmentKind
    name: str
    every_days: int | None
    expected: int | None
    tolerance: int | None
    retired: bool
    note: str | None
    last: CheckRow | None
    next_on: date | None
    why_due: str | None


_ITEMS = """
SELECT e.id, e.code, e.kind, r.name, r.every_days, r.expected, r.tolerance, r.retired, r.note
FROM live_equipment e
JOIN live_equipment_revision r ON r.id = coalesce(
  (SELECT max(v.id) FROM live_equipment_revision v JOIN entry n ON n.id = v.entry_id
   WHERE v.equipment_id = e.id AND (:on IS NULL OR substr(n.recorded_at, 1, 10) <= :on)),
  (SELECT min(v.id) FROM live_equipment_revision v WHERE v.equipment_id = e.id))
ORDER BY e.kind = 'scale' DESC, e.kind, e.id
"""


def checks_of(rows: sqlite3.Connection, item_id: int) -> tuple[CheckRow, ...]:
    """The checks of one item, oldest first; one whose reading at the bench was corrected since is none."""
    found = rows.execute(
        """
        SELECT k.id, k.entry_id AS entry, k."on", k.by, k.expected, k.found, k.tolerance, k.passed, k.note
        FROM live_equipment_check k WHERE k.equipment_id = ? AND NOT EXISTS (
          SELECT 1 FROM live_reading r JOIN live_reading c ON c.corrects = r.id
          WHERE r.entry_id = k.entry_id AND r.equipment_id = k.equipment_id)
        ORDER BY k."on", k.id
        """,
        (item_id,),
    )
    return tuple(CheckRow(**{**dict(row), "on": day(row["on"]), "passed": bool(row["passed"])}) for row in found)


def equipment_list(rows: sqlite3.Connection, on: date) -> tuple[EquipmentRow, ...]:
    """Every item as it is known now, with what is due on a day."""
    return tuple(_item(rows, row, on) for row in rows.execute(_ITEMS, {"on": None}).fetchall())


def _item(rows: sqlite3.Connection, row: sqlite3.Row, on: date) -> EquipmentRow:
    tried = [one for one in checks_of(rows, row["id"]) if one.on <= on]
    last = tried[-1] if tried else None
    next_on = (
        last.on + timedelta(days=row["every_days"]) if last and last.passed and row["every_days"] is not None else None
    )
    why = None
    if last is None:
        why = "never tried"
    elif not last.passed:
        why = "failed its last check"
    elif next_on and next_on <= on:
        why = "due today" if next_on == on else "overdue"
    retired = bool(row["retired"])
    return EquipmentRow(
        **{**dict(row), "retired": retired}, last=last, next_on=next_on, why_due=None if retired else why
    )


def due(rows: sqlite3.Connection, on: date) -> tuple[EquipmentRow, ...]:
    """The unretired items to be tried on a day: never tried, failed the last time, or their days are over."""
    return tuple(one for one in equipment_list(rows, on) if one.why_due)


def equipment_by_code(rows: sqlite3.Connection, text: str, on: date) -> EquipmentRow:
    """The item meant by a code, a name or the start of one. Raises BadInput with near matches."""
    what, add = "scale, thermometer or pH meter", "soapledger equipment add KIND NAME"
    return named(text, equipment_list(rows, on), noun=what, add=add)


def sole(rows: sqlite3.Connection, kind: EquipmentKind, on: date) -> EquipmentRow | None:
    """The only item of a kind that was not retired on a day; None where there is none, or a choice.

    An item counts from before it was entered, since that is only when it was written down.
    """
    found = [row for row in rows.execute(_ITEMS, {"on": on.isoformat()}) if row["kind"] == kind and not row["retired"]]
    return _item(rows, found[0], on) if len(found) == 1 else None


def how_many_ever(rows: sqlite3.Connection, kind: EquipmentKind) -> int:
    """How many items of a kind there ever were here."""
    return int(rows.execute("SELECT count(*) FROM live_equipment WHERE kind = ?", (kind,)).fetchone()[0])


class Measured(NamedTuple):
    """One weighing of a line, or one reading, of a batch; `item` is what it was said to be measured with."""

    code: str
    product: str
    line: int | None
    what: str | None
    on: date
    item: int | None


_AFTER_ALL = 2**62  # a number no entry has
# The last entry of which no day can be later than a check's: none is written for a day to come.
_WRITTEN = "SELECT id FROM entry WHERE id < ? AND recorded_at < ? ORDER BY id DESC LIMIT 1"
# Of the batches planned by then (nothing is measured before the day that is planned for), those planned after the
# check, and the others of which something was written since. Weighings of plan lines name no scale; packaging is
# counted. A reading that was corrected counts as corrected.
_MEASURED = """
WITH one (id) AS MATERIALIZED (
  SELECT id FROM batch WHERE "on" > coalesce(:since, '') AND "on" <= :until
  UNION SELECT batch_id FROM movement WHERE entry_id > :written AND plan_line_id IS NOT NULL
  UNION SELECT batch_id FROM reading WHERE entry_id > :written
)
SELECT b.code, mr.name AS product, x.line, x.what, x."on", x.item FROM (
  SELECT v.batch_id, v."on", v.entry_id, p.number AS line, NULL AS what, NULL AS item, v.id AS place
  FROM one CROSS JOIN plan_line p ON p.batch_id = one.id CROSS JOIN live_movement v ON v.plan_line_id = p.id
  WHERE :unit = 'mg' AND v.kind = 'consumed' AND p.role <> 'packaging'
  UNION ALL
  SELECT r.batch_id, r."on", r.entry_id, NULL, r.what, r.equipment_id, r.id
  FROM one CROSS JOIN live_reading r ON r.batch_id = one.id
  WHERE r.unit = :unit AND NOT EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id)
    AND (r.equipment_id IS NOT NULL OR r.what IS NOT :trial)
) x
CROSS JOIN live_batch b ON b.id = x.batch_id
CROSS JOIN live_material_revision mr ON mr.id = (
  SELECT max(id) FROM live_material_revision WHERE material_id = b.material_id)
WHERE x."on" <= :until AND (:since IS NULL OR x."on" > :since OR (x."on" = :since AND x.entry_id > :entry))
ORDER BY b.id, x."on", x.place
"""


def measured_between(
    rows: sqlite3.Connection, unit: ReadingUnit, *, but: str | None, since: CheckRow | None, until: date
) -> list[Measured]:
    """What was measured in a unit after a check up to a day, by batch and in the order it was done.

    On the day of the check only what was written after it. A reading `but` counts only with the item it names.
    """
    written = _AFTER_ALL
    if since:
        before = rows.execute(_WRITTEN, (since.entry, since.on.isoformat())).fetchone()
        written = before[0] if before else 0
    asked = {
        "unit": unit,
        "trial": but,
        "until": until.isoformat(),
        "since": since.on.isoformat() if since else None,
        "entry": since.entry if since else 0,
        "written": written,
    }
    return [
        Measured(row["code"], row["product"], row["line"], row["what"], day(row["on"]), row["item"])
        for row in rows.execute(_MEASURED, asked)
    ]


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
