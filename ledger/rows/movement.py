"""What everything else went into and came from: the movements, and the graph they make."""

import json
import sqlite3
from collections import Counter, defaultdict
from collections.abc import Collection
from datetime import date
from typing import Literal, NamedTuple

from ledger.domain.stock.graph import Graph, Node
from ledger.rows.opened import day
from ledger.units.words import Role, Stage, Way


class WentIn(NamedTuple):
    """What a line of a batch took of a lot, all its weighings together, in mg or pieces; who wrote the last, when.

    `note` stands with the last that counts.
    """

    line_id: int | None
    lot_id: int
    used: int
    who: str
    at: str  # UTC timestamp of the entry
    note: str | None


def went_in(rows: sqlite3.Connection, batch_id: int) -> tuple[WentIn, ...]:
    """What went into a batch by line and lot, in the order of work; what was put back to nothing is among it."""
    found = rows.execute(
        """
        SELECT w.line, w.lot, w.used, e.who, e.recorded_at,
               (SELECT v.note FROM live_movement v WHERE v.plan_line_id = w.line AND v.lot_id = w.lot
                ORDER BY v.id DESC LIMIT 1) FROM (
          SELECT v.plan_line_id AS line, v.lot_id AS lot, -sum(v.quantity) AS used, min(v.id) AS first,
                 max(v.entry_id) AS last
          FROM movement v WHERE v.batch_id = ? AND v.kind = 'consumed' GROUP BY v.plan_line_id, v.lot_id
        ) w JOIN entry e ON e.id = w.last
        ORDER BY (SELECT number FROM plan_line WHERE id = w.line), w.first
        """,
        (batch_id,),
    )
    return tuple(WentIn(*row) for row in found)


class Weighing(NamedTuple):
    """One weighing of a line as one entry logged it, in mg or pieces."""

    line_id: int
    entry: int
    who: str
    lot_code: str
    used: int


def weighings_of(rows: sqlite3.Connection, lines: Collection[int]) -> tuple[Weighing, ...]:
    """Every weighing of some plan lines that counts, as they were booked, in one statement."""
    found = rows.execute(
        "SELECT w.plan_line_id, w.entry_id, e.who, l.code, -w.quantity FROM json_each(?) asked "
        "CROSS JOIN live_movement w ON w.plan_line_id = asked.value AND w.kind = 'consumed' "
        "JOIN lot l ON l.id = w.lot_id JOIN entry e ON e.id = w.entry_id ORDER BY w.id",
        (json.dumps(list(lines)),),
    )
    return tuple(Weighing(*row) for row in found)


def came_out(rows: sqlite3.Connection, batch_id: int) -> dict[int, int]:
    """What a batch gave, in mg or pieces, by the lot."""
    found = rows.execute(
        "SELECT v.lot_id, sum(v.quantity) AS made FROM movement v WHERE v.batch_id = ? AND v.kind = 'yielded' "
        "GROUP BY v.lot_id HAVING made > 0 ORDER BY v.lot_id",
        (batch_id,),
    )
    return {row["lot_id"]: row["made"] for row in found}


_FOLLOWED = {"up": ("yielded", "consumed"), "down": ("consumed", "yielded")}  # from a lot, from a batch


def graph_from(rows: sqlite3.Connection, starts: Collection[Node], way: Literal["up", "down"]) -> Graph:
    """Every edge that still holds (a batch and a lot whose movements do not cancel) on the way up or down from some.

    One statement, which reads what it reaches and nothing else of the ledger.
    """
    of_lot, of_batch = _FOLLOWED[way]
    edges = rows.execute(
        """
        WITH RECURSIVE reached (lot, batch) AS (
          SELECT value, NULL FROM json_each(:lots) UNION SELECT NULL, value FROM json_each(:batches)
          UNION SELECT NULL, v.batch_id FROM reached r CROSS JOIN movement v ON v.lot_id = r.lot
            WHERE v.kind = :of_lot AND v.batch_id IS NOT NULL
          UNION SELECT v.lot_id, NULL FROM reached r CROSS JOIN movement v ON v.batch_id = r.batch
            WHERE v.kind = :of_batch)
        SELECT v.batch_id, v.lot_id,
               sum(CASE v.kind WHEN 'consumed' THEN v.quantity ELSE 0 END) AS consumed,
               sum(CASE v.kind WHEN 'yielded' THEN v.quantity ELSE 0 END) AS yielded
        FROM reached r CROSS JOIN movement v ON v.batch_id = r.batch
        GROUP BY v.batch_id, v.lot_id ORDER BY v.batch_id, v.lot_id
        """,
        {
            "lots": json.dumps([number for kind, number in starts if kind == "lot"]),
            "batches": json.dumps([number for kind, number in starts if kind == "batch"]),
            "of_lot": of_lot,
            "of_batch": of_batch,
        },
    ).fetchall()
    return Graph(
        consumed=[(row["lot_id"], row["batch_id"]) for row in edges if row["consumed"]],
        yielded=[(row["batch_id"], row["lot_id"]) for row in edges if row["yielded"]],
    )


def batches_behind(rows: sqlite3.Connection, batches: Collection[int]) -> set[int]:
    """Some batches with every batch that gave what they ever took, at any depth, in one statement."""
    found = rows.execute(
        """
        WITH RECURSIVE behind(batch_id) AS (
          SELECT value FROM json_each(?) UNION
          SELECT l.batch_id FROM behind w CROSS JOIN movement v ON v.batch_id = w.batch_id
          JOIN lot l ON l.id = v.lot_id WHERE v.kind = 'consumed' AND l.batch_id IS NOT NULL)
        SELECT batch_id FROM behind
        """,
        (json.dumps(sorted({*batches})),),
    )
    return {row[0] for row in found}


class Taken(NamedTuple):
    """What one movement took of a lot into a batch (below zero: put back), on the line of the plan with this role."""

    id: int
    batch_id: int
    lot_id: int
    role: Role | None
    quantity: int


def taken_into(rows: sqlite3.Connection, batches: Collection[int]) -> list[Taken]:
    """Everything that went into batches, in the order it was booked."""
    found = rows.execute(
        "SELECT v.id, v.batch_id, v.lot_id, p.role, -v.quantity FROM json_each(?) w CROSS JOIN movement v "
        "ON v.batch_id = w.value LEFT JOIN plan_line p ON p.id = v.plan_line_id WHERE v.kind = 'consumed' "
        "ORDER BY v.id",
        (json.dumps(sorted({*batches})),),
    )
    return [Taken(*row) for row in found]


def lots_used(rows: sqlite3.Connection, batch_id: int) -> list[int]:
    """The lots of which something is in a batch, by their row numbers."""
    used = Counter[int]()
    for one in taken_into(rows, [batch_id]):
        used[one.lot_id] += one.quantity
    return sorted(lot for lot, quantity in used.items() if quantity > 0)


def taken_on(rows: sqlite3.Connection, line_id: int) -> dict[int, int]:
    """How much of each lot is in on one line of a plan, in the order they were first taken."""
    found = rows.execute(
        "SELECT lot_id, -sum(quantity) FROM movement WHERE plan_line_id = ? GROUP BY lot_id ORDER BY min(id)",
        (line_id,),
    )
    return {row[0]: row[1] for row in found}


class MovementRow(NamedTuple):
    """One movement as it was booked."""

    id: int
    kind: Way
    place_id: int
    on: date
    lot_id: int
    quantity: int
    batch_id: int | None
    plan_line_id: int | None
    customer_id: int | None
    money_minor: int | None


_MOVEMENT = (
    'SELECT v.id, v.kind, v.place_id, v."on", v.lot_id, v.quantity, v.batch_id, v.plan_line_id, v.customer_id, '
    "v.money_minor FROM "
)


def _movement(row: sqlite3.Row) -> MovementRow:
    return MovementRow(*row)._replace(on=day(row["on"]))


def moved_by(rows: sqlite3.Connection, entry: int) -> list[MovementRow]:
    """The movements an entry wrote, the last first."""
    query = _MOVEMENT + "movement v WHERE v.entry_id = ? ORDER BY v.id DESC"
    return [_movement(row) for row in rows.execute(query, (entry,))]


def offcuts_of(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, int]:
    """What batches gave beside what they were made for, in mg; those that gave nothing else are left out."""
    found = rows.execute(
        "SELECT v.batch_id, sum(v.quantity) FROM json_each(?) w CROSS JOIN movement v ON v.batch_id = w.value "
        "JOIN batch b ON b.id = v.batch_id JOIN lot l ON l.id = v.lot_id AND l.material_id <> b.material_id "
        "WHERE v.kind = 'yielded' GROUP BY v.batch_id",
        (json.dumps(sorted({*batches})),),
    )
    return {row[0]: row[1] for row in found}


def moved_among(rows: sqlite3.Connection, batches: Collection[int]) -> dict[tuple[int, int], int]:
    """So much of each lot went into each of some batches, or came of it, by (lot, batch), in mg or pieces."""
    found = rows.execute(
        "SELECT v.lot_id, v.batch_id, abs(sum(v.quantity)) FROM json_each(?) w CROSS JOIN movement v "
        "ON v.batch_id = w.value GROUP BY v.batch_id, v.lot_id",
        (json.dumps(sorted({*batches})),),
    )
    return {(row[0], row[1]): row[2] for row in found}


class TakenBehind(NamedTuple):
    """What a batch took of a lot in one role, in mg; the batch that gave the lot, where one did."""

    batch_id: int
    lot_id: int
    behind: int | None
    used: int
    role: Role | None
    stage: Stage | None


_TAKEN = """
WITH RECURSIVE behind (batch) AS (
  SELECT value FROM json_each(?) UNION
  SELECT l.batch_id FROM behind b CROSS JOIN movement v ON v.batch_id = b.batch AND v.kind = 'consumed'
  CROSS JOIN lot l ON l.id = v.lot_id WHERE l.batch_id IS NOT NULL
)
SELECT v.batch_id, v.lot_id, l.batch_id AS behind, -sum(v.quantity) AS used, p.role, p.stage
FROM behind b CROSS JOIN movement v ON v.batch_id = b.batch AND v.kind = 'consumed'
CROSS JOIN lot l ON l.id = v.lot_id CROSS JOIN material m ON m.id = l.material_id AND m.kind <> 'packaging'
LEFT JOIN plan_line p ON p.id = v.plan_line_id
GROUP BY v.batch_id, v.lot_id, p.role, p.stage HAVING used > 0 ORDER BY v.batch_id, min(v.id)
"""


def taken_behind(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, list[TakenBehind]]:
    """What some batches and all those behind them took, wrapping apart, by the batch, in one statement."""
    found: dict[int, list[TakenBehind]] = defaultdict(list)
    for row in rows.execute(_TAKEN, (json.dumps(list(batches)),)):
        found[row["batch_id"]].append(TakenBehind(*row))
    return found


def batches_in(rows: sqlite3.Connection, batch_id: int) -> set[int]:
    """A batch with every batch that something in it came from, at any depth; what was put back counts no more."""
    took, found, waiting = taken_behind(rows, [batch_id]), {batch_id}, [batch_id]
    while waiting:
        new = {one.behind for one in took.get(waiting.pop(), ()) if one.behind is not None} - found
        found |= new
        waiting += new
    return found


class LotMovement(NamedTuple):
    """One thing that happened to a lot; mg or pieces."""

    on: date
    what: Way
    quantity: int
    place: str
    batch: str | None
    customer: str | None
    note: str | None
    entry: int


def happened_to(rows: sqlite3.Connection, lot_id: int) -> tuple[LotMovement, ...]:
    """Everything that happened to a lot and counts, by its days."""
    found = rows.execute(
        """
        SELECT v."on", v.kind, v.quantity, p.name, b.code, c.code, v.note, v.entry_id
        FROM live_movement v JOIN place p ON p.id = v.place_id
        LEFT JOIN batch b ON b.id = v.batch_id LEFT JOIN customer c ON c.id = v.customer_id
        WHERE v.lot_id = ? ORDER BY v."on", v.id
        """,
        (lot_id,),
    )
    return tuple(LotMovement(day(row[0]), *row[1:]) for row in found)
