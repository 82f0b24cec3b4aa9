"""What was read at the bench, as it counts."""

import json
import sqlite3
from collections.abc import Collection, Iterable
from datetime import date
from typing import NamedTuple

from ledger.domain.tools.bar_checks import kept_as_good
from ledger.rows.batch import BatchRow
from ledger.rows.opened import day, maybe_day
from ledger.units.words import AlkaliKind, MaterialKind, ReadingUnit, Role, Stage, WorkStage


class ReadingRow(NamedTuple):
    """One reading as it was booked; its value in its unit."""

    id: int
    entry_id: int
    batch_id: int
    on: date
    at: str | None
    what: str
    value: int | None
    unit: ReadingUnit | None
    mark: str | None
    method: str | None
    corrects: int | None
    bars: int | None  # of a weighing: how many bars were weighed together


_SQL = """
SELECT r.id, r.entry_id, r.batch_id, r."on", r.at, r.what, r.value, r.unit, r.mark, r.method, r.corrects, r.bars
FROM json_each(?) w CROSS JOIN live_reading r ON r.batch_id = w.value
"""
_CURRENT = """
WHERE r.plan_line_id IS NULL AND NOT EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id) ORDER BY r.id
"""


def _readings(rows: sqlite3.Connection, where: str, batches: Collection[int]) -> list[ReadingRow]:
    found = rows.execute(_SQL + where, (json.dumps(sorted({*batches})),))
    return [ReadingRow(*row)._replace(on=day(row["on"])) for row in found]


def current_readings(rows: sqlite3.Connection, batch_id: int) -> list[ReadingRow]:
    """The readings that count, in the order they were booked; lines left out are none."""
    return _readings(rows, _CURRENT, [batch_id])


def cooked_off(rows: sqlite3.Connection, batch_id: int) -> int | None:
    """What the pot lost between its two weighings, in mg; None where it was not weighed both times."""
    return lost_in_the_pot(current_readings(rows, batch_id))


def readings_of(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, list[ReadingRow]]:
    """Likewise of several batches, by the batch, in one statement."""
    found: dict[int, list[ReadingRow]] = {batch: [] for batch in batches}
    for one in _readings(rows, _CURRENT, found):
        found[one.batch_id].append(one)
    return found


def read_of_the_bars(rows: sqlite3.Connection, batch: BatchRow, what: str) -> list[ReadingRow]:
    """The readings of one kind that were taken of the bars and not of the dough, by their days.

    They are of the day of the cut or later, and were booked after the cut: on the day of the cut itself the order of
    the entries decides. A correction stands where the first of the readings it corrects was booked.
    """
    cut = rows.execute("SELECT entry_id FROM live_lot WHERE id = ?", (batch.yield_lot_id,)).fetchone()
    if cut is None or batch.yielded_on is None:
        return []
    every = {one.id: one for one in _readings(rows, "", [batch.id])}
    found = []
    for one in current_readings(rows, batch.id):
        first = one
        while first.corrects in every:
            first = every[first.corrects]
        if one.what == what and one.on >= batch.yielded_on and first.entry_id > cut["entry_id"]:
            found.append(one)
    return sorted(found, key=lambda one: (one.on, one.id))


class Observation(NamedTuple):
    """One thing read, counting or corrected since, with who wrote it down and what it was read with."""

    on: date
    at: str | None
    what: str
    value: int | None
    unit: ReadingUnit | None
    text: str | None
    mark: str | None
    method: str | None
    by: str
    entry: int
    tool: str | None
    corrected: bool
    bars: int | None


def observations(rows: sqlite3.Connection, batch_id: int) -> tuple[Observation, ...]:
    """Everything read of a batch, those corrected too, by their days."""
    found = rows.execute(
        """
        SELECT r."on", r.at, r.what, r.value, r.unit, r.text, r.mark, r.method, r.bars, e.who AS by,
          r.entry_id AS entry, q.code AS tool,
          EXISTS (SELECT 1 FROM live_reading x WHERE x.corrects = r.id) AS corrected
        FROM live_reading r JOIN entry e ON e.id = r.entry_id LEFT JOIN equipment q ON q.id = r.equipment_id
        WHERE r.batch_id = ? ORDER BY r."on", r.id
        """,
        (batch_id,),
    )
    return tuple(
        Observation(**{**dict(row), "on": day(row["on"]), "corrected": bool(row["corrected"])}) for row in found
    )


class FinishedLook(NamedTuple):
    """One point of the checklist as it was looked at before the release."""

    on: date
    what: str
    found: str
    good: bool | None  # None: words of an earlier ledger, from which it cannot be told
    by: str


def looks(rows: sqlite3.Connection, lot_id: int | None) -> tuple[FinishedLook, ...]:
    """What was looked at of some bars, in the order it was booked."""
    found = rows.execute(
        'SELECT "on", what, found, good, by FROM live_finished_check WHERE lot_id = ? ORDER BY id', (lot_id,)
    )
    return tuple(
        FinishedLook(day(on), what, words, kept_as_good(what, words, bool(good)), by)
        for on, what, words, good, by in found
    )


def mass_in(rows: sqlite3.Connection, batch_id: int) -> int:
    """Everything weighed into a batch, in mg; packaging and bars are counted, not weighed."""
    return masses_in(rows, [batch_id])[batch_id]


def masses_in(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, int]:
    """Likewise into several batches, by the batch, in one statement."""
    found = rows.execute(
        "SELECT v.batch_id, -sum(v.quantity) FROM json_each(?) w CROSS JOIN movement v ON v.batch_id = w.value "
        "JOIN lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id "
        "WHERE v.kind = 'consumed' AND m.kind NOT IN ('packaging', 'soap') GROUP BY v.batch_id",
        (json.dumps(sorted({*batches})),),
    )
    return dict.fromkeys(batches, 0) | {row[0]: row[1] for row in found}


def lost_in_the_pot(readings: Iterable[ReadingRow]) -> int | None:
    """Likewise by the readings that count."""
    read = {one.what: one.value for one in readings}
    before, after = read.get("pot before cook"), read.get("pot after cook")
    return before - after if before is not None and after is not None else None


def first_of(rows: sqlite3.Connection, batch_id: int, readings: Collection[str]) -> str | None:
    """The first booked of these readings that a batch has, corrected or not; None where it has none."""
    found = rows.execute(
        "SELECT what FROM live_reading WHERE batch_id = ? AND what IN (SELECT value FROM json_each(?)) "
        "ORDER BY id LIMIT 1",
        (batch_id, json.dumps(list(readings))),
    ).fetchone()
    return found and str(found[0])


def work_of(rows: sqlite3.Connection, batch_id: int) -> dict[WorkStage, int]:
    """The minutes booked on a batch by stage, in the order of the first."""
    found = rows.execute(
        "SELECT stage, sum(minutes) FROM live_work WHERE batch_id = ? GROUP BY stage ORDER BY min(id)", (batch_id,)
    )
    return {row[0]: row[1] for row in found}


def minutes_worked(rows: sqlite3.Connection, batches: Collection[int], *, on: date | None = None) -> dict[int, int]:
    """The minutes of work read for batches, up to a day when one is given; those for which none were are left out."""
    found = rows.execute(
        "SELECT r.batch_id, sum(r.value) FROM json_each(:batches) w CROSS JOIN live_reading r ON r.batch_id = w.value "
        "WHERE r.what = 'labour' AND NOT EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id) "
        'AND (:on IS NULL OR r."on" <= :on) GROUP BY r.batch_id',
        {"batches": json.dumps(sorted({*batches})), "on": on and on.isoformat()},
    )
    return {row[0]: row[1] for row in found}


def dough_measured(rows: sqlite3.Connection, recipe_code: str) -> tuple[int, int]:
    """The mass in mg and the volume of the batches of a recipe whose dough was measured, added up.

    The volume is the reading 'dough volume'; the mass is all that was weighed in, wrapping apart.
    """
    found = rows.execute(
        """
        SELECT coalesce(sum(mass), 0), coalesce(sum(volume), 0) FROM (
          SELECT g.value AS volume,
                 (SELECT -sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id
                  JOIN material m ON m.id = l.material_id
                  WHERE v.batch_id = b.id AND v.kind = 'consumed' AND m.kind <> 'packaging') AS mass
          FROM live_batch b JOIN recipe_version w ON w.id = b.recipe_version_id JOIN recipe r ON r.id = w.recipe_id
          JOIN live_reading g
            ON g.id = (SELECT max(id) FROM live_reading WHERE batch_id = b.id AND what = 'dough volume')
          WHERE r.code = ? AND b.process IN ('cold', 'hot'))
        """,
        (recipe_code,),
    ).fetchone()
    return found[0], found[1]


def last_worked_on(rows: sqlite3.Connection, batch_id: int) -> date | None:
    """The last day on which something was weighed into a batch or it was poured; None before either."""
    found = rows.execute(
        'SELECT max("on") FROM (SELECT "on" FROM live_movement WHERE batch_id = :batch '
        "UNION ALL SELECT \"on\" FROM live_reading WHERE batch_id = :batch AND what = 'poured')",
        {"batch": batch_id},
    ).fetchone()
    return maybe_day(found[0])


class WeighedRow(NamedTuple):
    """A lot weighed for a batch, with its own figures and those of its material that were known then."""

    went_into: int
    role: Role
    stage: Stage
    material_id: int
    lot_id: int
    mass: int
    lot_low: int | None
    lot_high: int | None
    lot_purity: int | None
    lot_purity_high: int | None
    lot_water: int | None
    certificate: str | None
    code: str
    batch_id: int | None
    reference_key: str | None
    low: int | None
    high: int | None
    sap_source: str | None
    purity: int | None
    alkali_kind: AlkaliKind | None
    water: int | None
    acid_koh_mg_per_kg: int | None
    name: str
    kind: MaterialKind
    asked_id: int  # the material of the line


# The material's figures are those known when it was last weighed: a value mended later, or wrapping used
# later, does not change what the record says.
_WEIGHED = """
SELECT v.batch_id AS went_into, p.role, p.stage, l.material_id, v.lot_id, -sum(v.quantity) AS mass,
       l.sap_low_mg_per_kg AS lot_low,
       l.sap_high_mg_per_kg AS lot_high, l.purity_ppm AS lot_purity, l.purity_high_ppm AS lot_purity_high,
       l.water_ppm AS lot_water, l.certificate, l.code, l.batch_id, mr.reference_key, mr.sap_low_mg_per_kg AS low,
       mr.sap_high_mg_per_kg AS high,
       mr.sap_source, mr.purity_ppm AS purity, mr.alkali_kind, mr.water_ppm AS water, mr.acid_koh_mg_per_kg, mr.name,
       m.kind, p.material_id AS asked_id
FROM json_each(?) into_ CROSS JOIN movement v ON v.batch_id = into_.value
JOIN live_plan_line p ON p.id = v.plan_line_id JOIN lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id
JOIN material_revision mr ON mr.id =
  (SELECT max(r.id) FROM live_material_revision r WHERE r.material_id = l.material_id
   AND r.entry_id <= (SELECT max(w.entry_id) FROM movement w JOIN plan_line q ON q.id = w.plan_line_id
                      WHERE w.batch_id = v.batch_id AND q.role <> 'packaging'))
WHERE v.kind = 'consumed' AND p.role <> 'packaging'
GROUP BY v.batch_id, p.role, p.stage, p.material_id, v.lot_id HAVING mass > 0 ORDER BY min(p.number)
"""


def weighed_into(rows: sqlite3.Connection, batches: Collection[int]) -> list[WeighedRow]:
    """Everything weighed for some batches so far, wrapping apart, in one statement."""
    return [WeighedRow(*row) for row in rows.execute(_WEIGHED, (json.dumps(list(batches)),))]
