"""Which batches a failed check throws doubt on: those weighed or measured since the last good one."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.tools.equipment import READ_WITH
from ledger.domain.tools.readings import READINGS
from ledger.rows.equipment import CheckRow, EquipmentRow, checks_of
from ledger.rows.opened import Row, Rows, day


@dataclass(frozen=True)
class TouchedBatch:
    """One batch, with what was weighed and read of it, and from when until when."""

    code: str
    product: str
    lines: tuple[int, ...]  # the numbers of the lines weighed
    readings: tuple[str, ...]
    first_on: date
    last_on: date


@dataclass(frozen=True)
class Touched:
    """The batches of one failed check; `unsaid` are those of which it was not said with which they were measured."""

    check: CheckRow
    since: date | None  # the last good check; None: there was none before
    batches: tuple[TouchedBatch, ...]
    unsaid: tuple[TouchedBatch, ...]


# Weighings of plan lines name no scale; packaging is counted. A reading that was corrected counts as corrected.
_MEASURED = """
SELECT b.code, mr.name AS product, x.line, x.what, x."on", x.item FROM (
  SELECT v.batch_id, v."on", v.entry_id, p.number AS line, NULL AS what, NULL AS item, v.id AS place
  FROM live_movement v JOIN plan_line p ON p.id = v.plan_line_id
  WHERE :unit = 'mg' AND v.kind = 'consumed' AND p.role <> 'packaging'
  UNION ALL
  SELECT r.batch_id, r."on", r.entry_id, NULL, r.what, r.equipment_id, r.id FROM live_reading r
  WHERE r.unit = :unit AND NOT EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id)
    AND (r.equipment_id IS NOT NULL OR r.what IS NOT :trial)
) x
JOIN live_batch b ON b.id = x.batch_id
JOIN live_material_revision mr ON mr.id = (
  SELECT max(id) FROM live_material_revision WHERE material_id = b.material_id)
WHERE x."on" <= :until AND (:since IS NULL OR x."on" > :since OR (x."on" = :since AND x.entry_id > :entry))
ORDER BY b.id, x."on", x.place
"""


def touched_since_last_good(rows: Rows, item: EquipmentRow, check: CheckRow) -> Touched:
    """The batches measured with an item after its last good check, up to the day of this one.

    On the day of the good check those written after it count. What names no item is its own where it is the
    only one of its kind that ever was here, else it cannot be excluded.
    """
    good = [one for one in checks_of(rows, item.id) if one.passed and (one.on, one.id) < (check.on, check.id)]
    last = good[-1] if good else None
    found = rows.execute(
        _MEASURED,
        {
            "unit": READ_WITH[item.kind].unit,
            "trial": next((one.what for one in READINGS.values() if one.tries == item.kind), None),
            "until": check.on.isoformat(),
            "since": last.on.isoformat() if last else None,
            "entry": last.entry if last else 0,
        },
    ).fetchall()
    several = rows.execute("SELECT count(*) FROM live_equipment WHERE kind = ?", (item.kind,)).fetchone()[0] > 1
    named = {row["code"] for row in found if row["item"] == item.id}
    own = [row for row in found if row["item"] in (None, item.id) and (not several or row["code"] in named)]
    unsaid = [row for row in found if row["item"] is None and several and row["code"] not in named]
    return Touched(check, last.on if last else None, _by_batch(own), _by_batch(unsaid))


def _by_batch(found: list[Row]) -> tuple[TouchedBatch, ...]:
    batches: dict[str, list[Row]] = {}
    for row in found:
        batches.setdefault(row["code"], []).append(row)
    return tuple(
        TouchedBatch(
            code=code,
            product=of[0]["product"],
            lines=tuple(sorted({row["line"] for row in of if row["line"] is not None})),
            readings=tuple(dict.fromkeys(row["what"] for row in of if row["what"] is not None)),
            first_on=day(min(row["on"] for row in of)),
            last_on=day(max(row["on"] for row in of)),
        )
        for code, of in batches.items()
    )
