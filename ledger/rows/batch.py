"""Batches: what they are, and where each stands, read from the facts."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date, timedelta
from typing import NamedTuple

from ledger.domain.bench.status import Written, status_of
from ledger.errors import BadInput, Refused
from ledger.rows.codes import near_words, read_code
from ledger.rows.opened import day, maybe_day
from ledger.units.codes import looks_like_batch_code, read_batch_code
from ledger.units.words import MaterialKind, Process, Role, Stage, Verdict, in_pieces


class BatchRow(NamedTuple):
    """One batch as it stands."""

    id: int
    code: str
    process: Process
    material_id: int
    product: str
    kind: MaterialKind  # soap, or what else it gives
    part_of: str | None  # the batch a portion was divided from
    portion: str | None
    recipe_version_id: int | None
    recipe_code: str | None
    recipe_version: int | None
    planned_on: date
    made_on: date | None  # the day the first material was weighed
    bars_planned: int | None
    open_lines: int  # lines still to be weighed, packaging apart
    lines: int
    poured: bool
    yield_lot_id: int | None  # its bars, or the bulk it gave
    yielded_on: date | None
    made: int  # bars, or mg of bulk
    lot_status: Verdict | None  # decided last about that
    discarded: bool
    cure_days: int | None
    usable_from_days: int | None

    @property
    def ready_on(self) -> date | None:
        """The day the cure ends."""
        if self.yielded_on is None or self.cure_days is None:
            return None
        return self.yielded_on + timedelta(days=self.cure_days)

    @property
    def usable_from(self) -> date | None:
        """The day hot-process soap can be used from, though it is not yet steady in weight."""
        if self.yielded_on is None or self.usable_from_days is None:
            return None
        return self.yielded_on + timedelta(days=self.usable_from_days)

    @property
    def on(self) -> date:
        """The day it was made, or is planned for."""
        return self.made_on or self.planned_on

    @property
    def soap(self) -> bool:
        """Whether it gives bars."""
        return self.kind == "soap"

    @property
    def status(self) -> str:
        """Where it stands, in the words of the trade."""
        given, verdict = self.yield_lot_id is not None, self.lot_status
        return status_of(
            Written(self.process, self.soap, self.lines, self.open_lines, self.poured, given, verdict, self.discarded)
        )


_SQL = """
SELECT b.id, b.code, b.process, b.material_id, mr.name AS product, m.kind, parent.code AS part_of, b.portion,
       b.recipe_version_id, r.code AS recipe_code,
       rv.number AS recipe_version, f.cure_days, f.usable_from_days, b."on" AS planned_on, b.bars_planned,
       (SELECT min(v."on") FROM live_movement v JOIN live_plan_line p ON p.id = v.plan_line_id
        WHERE v.batch_id = b.id AND p.role <> 'packaging') AS made_on,
       (SELECT count(*) FROM live_plan_line p WHERE p.batch_id = b.id AND p.role <> 'packaging') AS lines,
       (SELECT count(*) FROM live_plan_line p WHERE p.batch_id = b.id AND p.role <> 'packaging'
        AND NOT EXISTS (SELECT 1 FROM live_movement v WHERE v.plan_line_id = p.id)
        AND NOT EXISTS (SELECT 1 FROM live_reading g WHERE g.plan_line_id = p.id)) AS open_lines,
       EXISTS (SELECT 1 FROM live_reading g WHERE g.batch_id = b.id AND g.what = 'poured') AS poured,
       l.id AS yield_lot_id, l."on" AS yielded_on,
       (SELECT coalesce(sum(v.quantity), 0) FROM movement v WHERE v.lot_id = l.id AND v.kind = 'yielded') AS made,
       (SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id ORDER BY d.id DESC LIMIT 1) AS lot_status,
       EXISTS (SELECT 1 FROM live_decision d WHERE d.batch_id = b.id AND d.verdict = 'discarded') AS discarded
FROM live_batch b
JOIN material m ON m.id = b.material_id
LEFT JOIN batch parent ON parent.id = b.part_of
JOIN live_material_revision mr
  ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = b.material_id)
LEFT JOIN recipe_version rv ON rv.id = b.recipe_version_id
LEFT JOIN recipe r ON r.id = rv.recipe_id
LEFT JOIN main.recipe_figures f ON f.recipe_version_id = rv.id
LEFT JOIN live_lot l ON l.batch_id = b.id AND +l.material_id = b.material_id  -- +: found by its batch
"""


def _batch(row: sqlite3.Row) -> BatchRow:
    values = dict(row)
    if values["kind"] != "soap":
        values["cure_days"] = values["usable_from_days"] = None
    values["planned_on"] = day(values["planned_on"])
    values["made_on"] = maybe_day(values["made_on"])
    values["yielded_on"] = maybe_day(values["yielded_on"])
    values["poured"], values["discarded"] = bool(values["poured"]), bool(values["discarded"])
    return BatchRow(**values)


def batches(rows: sqlite3.Connection, *, last: int | None = None) -> tuple[BatchRow, ...]:
    """Every batch, oldest first; only the last so many where told."""
    latest = "" if last is None else 'WHERE b.id IN (SELECT id FROM live_batch ORDER BY "on" DESC, id DESC LIMIT :last)'
    return tuple(_batch(row) for row in rows.execute(f'{_SQL} {latest} ORDER BY b."on", b.id', {"last": last}))


def batch_by_id(rows: sqlite3.Connection, batch_id: int) -> BatchRow:
    """One batch by its row number."""
    return batches_by_id(rows, [batch_id])[batch_id]


# Bars that are here and whose latest decision up to the day, if there is one, is a hold that no passing went before.
_ON_THE_RACK = """
WHERE b.id IN (
  SELECT l.batch_id FROM live_lot l
  WHERE l.material_id IN (SELECT id FROM material WHERE kind = 'soap') AND l."on" <= :on
    AND coalesce((SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id AND d."on" <= :on
                  ORDER BY d.id DESC LIMIT 1), 'on hold') = 'on hold'
    AND NOT EXISTS (SELECT 1 FROM live_decision d WHERE d.lot_id = l.id AND d.verdict = 'passed' AND d."on" <= :on)
    AND (SELECT sum(v.quantity) FROM movement v WHERE v.lot_id = l.id AND v."on" <= :on) <> 0)
ORDER BY b.id
"""


def batches_on_the_rack(rows: sqlite3.Connection, on: date) -> tuple[BatchRow, ...]:
    """The batches whose bars are here on a day and not passed for packing."""
    return tuple(_batch(row) for row in rows.execute(_SQL + _ON_THE_RACK, {"on": on.isoformat()}))


_CUT_BEFORE = """
WHERE b.id IN (
  SELECT o.id FROM live_batch o JOIN recipe_version w ON w.id = o.recipe_version_id
  JOIN recipe q ON q.id = w.recipe_id JOIN live_lot c ON c.batch_id = o.id AND +c.material_id = o.material_id
  WHERE q.code = :recipe AND o.portion IS :portion AND c."on" <= :cut AND o.id < :batch
  ORDER BY o.id DESC LIMIT 12)
ORDER BY b.id DESC
"""


def cut_before(rows: sqlite3.Connection, batch: BatchRow) -> tuple[BatchRow, ...]:
    """The last dozen batches of the same recipe, and portion of it, that were cut before this one; the latest first."""
    cut = batch.yielded_on.isoformat() if batch.yielded_on else None
    given = {"recipe": batch.recipe_code, "portion": batch.portion, "batch": batch.id, "cut": cut}
    return tuple(_batch(row) for row in rows.execute(_SQL + _CUT_BEFORE, given))


def cut_of_recipes(rows: sqlite3.Connection, codes: Collection[str]) -> dict[str, list[int]]:
    """The row numbers of the batches of some recipes that were cut, the first first, in one statement."""
    found: dict[str, list[int]] = {code: [] for code in codes}
    query = (
        "SELECT q.code, o.id FROM json_each(?) w CROSS JOIN recipe q ON q.code = w.value "
        "JOIN recipe_version v ON v.recipe_id = q.id JOIN live_batch o ON o.recipe_version_id = v.id "
        "WHERE EXISTS (SELECT 1 FROM live_lot c WHERE c.batch_id = o.id AND +c.material_id = o.material_id) "
        "ORDER BY o.id"
    )
    for code, number in rows.execute(query, (json.dumps(sorted(codes)),)):
        found[code].append(number)
    return found


def infusions_among(rows: sqlite3.Connection, numbers: Collection[int]) -> tuple[str, ...]:
    """The codes of those of some batches, by their row numbers, that were strained off herbs."""
    found = rows.execute(
        "SELECT code FROM batch WHERE process = 'infusion' AND id IN (SELECT value FROM json_each(?)) ORDER BY code",
        (json.dumps(list(numbers)),),
    )
    return tuple(row[0] for row in found)


def batches_coded(rows: sqlite3.Connection, codes: Collection[str]) -> dict[str, BatchRow]:
    """Several batches by their codes, in one statement."""
    query = _SQL + " WHERE b.code IN (SELECT value FROM json_each(?))"
    return {row["code"]: _batch(row) for row in rows.execute(query, (json.dumps(sorted(codes)),))}


def batches_by_id(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, BatchRow]:
    """Several batches by their row numbers, in one statement."""
    query = _SQL + " WHERE b.id IN (SELECT value FROM json_each(?))"
    return {row["id"]: _batch(row) for row in rows.execute(query, (json.dumps(sorted(numbers)),))}


def portions_of(rows: sqlite3.Connection, *numbers: int) -> tuple[BatchRow, ...]:
    """The portions that batches divide into, in the order of their recipes."""
    query = _SQL + " WHERE b.part_of IN (SELECT value FROM json_each(?)) ORDER BY b.id"
    return tuple(_batch(row) for row in rows.execute(query, (json.dumps(numbers),)))


def find_batch(rows: sqlite3.Connection, text: str) -> BatchRow:
    """The batch meant by a code. Raises Refused for an unknown or mistyped code, BadInput for no code."""
    if not looks_like_batch_code(text):
        raise BadInput(f"'{text}' is not a batch code.{near_words(rows, text)} See them all: soapledger batch list")
    code = read_code(rows, text, read_batch_code)
    row = rows.execute(_SQL + " WHERE b.code = ?", (code,)).fetchone()
    if row is None:
        raise Refused(f"There is no batch {code} here.{near_words(rows, code)} See them all: soapledger batch list")
    return _batch(row)


class PlanLineRow(NamedTuple):
    """One numbered line of a batch, with what has been weighed on it."""

    id: int
    number: int
    role: Role
    material_id: int
    material_code: str
    material: str
    inci: str | None
    kind: MaterialKind
    lot_id: int | None
    target: int
    low: int
    high: int
    stage: Stage
    in_demand: int  # 0: a fat or an acid the lye is not reckoned for
    used: int  # mg or pieces taken so far
    logged: bool  # weighed, or left out

    @property
    def held_back(self) -> bool:
        """Whether it is a fat that goes in later than the others."""
        return self.role == "fat" and self.stage in ("at trace", "after the cook")

    @property
    def always_read(self) -> bool:
        """Whether its weight is always read from the scale: lye burns, and a fragrance has its limit on the skin."""
        return bool({self.role, self.kind} & {"alkali", "fragrance"})

    @property
    def left_out(self) -> bool:
        """Whether she said that none of it went in."""
        return self.logged and self.used == 0

    @property
    def outside(self) -> bool:
        """Whether more or less went in than OK from-to."""
        return self.logged and not self.left_out and not self.low <= self.used <= self.high

    @property
    def counted(self) -> bool:
        """Whether it is counted in pieces."""
        return in_pieces(self.kind)


def plan_lines(rows: sqlite3.Connection, batch_id: int) -> tuple[PlanLineRow, ...]:
    """The lines of a batch, in the order of work."""
    found = rows.execute(
        """
        SELECT p.id, p.number, p.role, p.material_id, m.code AS material_code, mr.name AS material, mr.inci,
               m.kind, p.lot_id, coalesce(t.target, p.target) AS target, coalesce(t.low, p.low) AS low,
               coalesce(t.high, p.high) AS high, p.stage, coalesce(p.in_demand, 1) AS in_demand,
               (SELECT coalesce(-sum(v.quantity), 0) FROM movement v WHERE v.plan_line_id = p.id) AS used,
               EXISTS (SELECT 1 FROM live_movement v WHERE v.plan_line_id = p.id)
               OR EXISTS (SELECT 1 FROM live_reading g WHERE g.plan_line_id = p.id) AS logged
        FROM live_plan_line p
        JOIN material m ON m.id = p.material_id
        JOIN live_material_revision mr
          ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
        LEFT JOIN live_plan_target t ON t.id = (SELECT max(id) FROM live_plan_target WHERE plan_line_id = p.id)
        WHERE p.batch_id = ? ORDER BY p.number
        """,
        (batch_id,),
    )
    return tuple(PlanLineRow(**{**dict(row), "logged": bool(row["logged"])}) for row in found)


def worked_by(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, tuple[Process, int | None]]:
    """By which process and recipe version some batches worked."""
    query = "SELECT id, process, recipe_version_id FROM batch WHERE id IN (SELECT value FROM json_each(?))"
    return {row[0]: (row[1], row[2]) for row in rows.execute(query, (json.dumps(list(batches)),))}
