"""Where bars and everything else went: the movements, counted by place and by way, and the graph they make."""

import json
import sqlite3
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal, NamedTuple

from ledger.domain.stock.graph import Graph, Node
from ledger.rows.opened import day
from ledger.units.dates import show_date
from ledger.units.words import Role, Way


@dataclass(frozen=True)
class BarCount:
    """Bars of one lot at one place, or gone one way on one day."""

    lot_id: int
    where: str  # on hand, at a stall, retained, returned, sold, dispatched, given, wasted, reworked, missing at a count
    detail: str  # the place, the stall, the customer, the reason
    on: date | None
    count: int
    left: bool
    customer_id: int | None


_HERE = {"workshop": "on hand", "stall": "at a stall", "retained": "retained", "returns": "returned"}
_WAYS = {"counted": "missing at a count", "consumed": "reworked"}


def bar_counts(rows: sqlite3.Connection, lot_ids: Sequence[int]) -> tuple[BarCount, ...]:
    """Every bar of some lots, by place for those that are here and by way for those that went.

    The lots stand in the order they were asked for; two statements, however many they are.
    """
    found: dict[int, list[BarCount]] = {lot_id: [] for lot_id in lot_ids}
    asked = (json.dumps(list(found)),)
    here = rows.execute(
        "SELECT v.lot_id, p.kind, p.name, sum(v.quantity) AS held FROM json_each(?) w CROSS JOIN movement v "
        "ON v.lot_id = w.value JOIN place p ON p.id = v.place_id "
        "GROUP BY v.lot_id, p.id HAVING held <> 0 ORDER BY v.lot_id, p.id",
        asked,
    )
    for row in here:
        one = BarCount(row["lot_id"], _HERE[row["kind"]], row["name"], None, row["held"], False, None)
        found[row["lot_id"]].append(one)
    gone = rows.execute(
        """
        SELECT v.lot_id, v.kind, v."on", p.name AS place, v.customer_id, v.note, -sum(v.quantity) AS gone
        FROM json_each(?) w CROSS JOIN live_movement v ON v.lot_id = w.value JOIN place p ON p.id = v.place_id
        WHERE v.kind IN ('sold','dispatched','given','wasted','returned','counted','consumed')
        GROUP BY v.lot_id, v.kind, v."on", v.place_id, v.customer_id, v.note HAVING gone <> 0
        ORDER BY v."on", min(v.id)
        """,
        asked,
    )
    for row in gone:
        kind = _WAYS.get(row["kind"], row["kind"])
        detail = row["place"] if kind == "sold" else row["note"] or ""
        one = BarCount(row["lot_id"], kind, detail, day(row["on"]), row["gone"], True, row["customer_id"])
        found[row["lot_id"]].append(one)
    return tuple(one for counts in found.values() for one in counts)


class BackOnSale(NamedTuple):
    """Bars of one batch put back on sale on one day; they are counted wherever they are since."""

    batch_code: str
    bars: int
    on: date
    why: str  # who decided, and the reason

    @property
    def words(self) -> str:
        """The same in words."""
        bars = "1 bar" if self.bars == 1 else f"{self.bars} bars"
        return f"{bars} back on sale on {show_date(self.on)}, from the returns shelf ({self.why})"


def back_on_sale(rows: sqlite3.Connection, lot_ids: Sequence[int]) -> tuple[BackOnSale, ...]:
    """Every time bars of some lots went from the returns shelf back on sale, oldest first."""
    found = rows.execute(
        """
        SELECT l.code, -v.quantity AS bars, v."on", v.note
        FROM json_each(?) w CROSS JOIN live_movement v ON v.lot_id = w.value
        JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
        WHERE p.kind = 'returns' AND v.kind = 'moved' AND v.quantity < 0 ORDER BY v."on", v.id
        """,
        (json.dumps(list(lot_ids)),),
    )
    return tuple(
        BackOnSale(row["code"], row["bars"], day(row["on"]), str(row["note"]).removeprefix("back on sale, "))
        for row in found
    )


class WentIn(NamedTuple):
    """What a line of a batch took of a lot, all its weighings together, in mg or pieces; who wrote the last, when."""

    line_id: int | None
    lot_id: int
    used: int
    who: str
    at: str  # UTC timestamp of the entry


def went_in(rows: sqlite3.Connection, batch_id: int) -> tuple[WentIn, ...]:
    """What went into a batch by line and lot, in the order of work; what was put back to nothing is among it."""
    found = rows.execute(
        """
        SELECT v.plan_line_id, v.lot_id, -sum(v.quantity), max(e.who), max(e.recorded_at)
        FROM movement v JOIN entry e ON e.id = v.entry_id
        WHERE v.batch_id = ? AND v.kind = 'consumed' GROUP BY v.plan_line_id, v.lot_id
        ORDER BY (SELECT number FROM plan_line WHERE id = v.plan_line_id), min(v.id)
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


def batches_behind(rows: sqlite3.Connection, batch_id: int) -> set[int]:
    """A batch with every batch that gave what it took, at any depth, in one statement."""
    found = rows.execute(
        """
        WITH RECURSIVE behind(batch_id) AS (
          SELECT ? UNION SELECT l.batch_id FROM behind w CROSS JOIN movement v ON v.batch_id = w.batch_id
          JOIN lot l ON l.id = v.lot_id WHERE v.kind = 'consumed' AND l.batch_id IS NOT NULL)
        SELECT batch_id FROM behind
        """,
        (batch_id,),
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


def movements_of(rows: sqlite3.Connection, lots: Collection[int]) -> list[MovementRow]:
    """The movements of lots that count, in the order they were booked; from place to place is none."""
    query = _MOVEMENT + (
        "json_each(?) w CROSS JOIN live_movement v ON v.lot_id = w.value WHERE v.kind <> 'moved' ORDER BY v.id"
    )
    return [_movement(row) for row in rows.execute(query, (json.dumps(sorted({*lots})),))]


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


def came_in(rows: sqlite3.Connection, lots: Collection[int]) -> dict[int, int]:
    """How much of lots was received or made in the first place, by their row numbers."""
    found = rows.execute(
        "SELECT v.lot_id, sum(v.quantity) FROM json_each(?) w CROSS JOIN movement v ON v.lot_id = w.value "
        "WHERE v.kind IN ('received', 'yielded') GROUP BY v.lot_id",
        (json.dumps(sorted({*lots})),),
    )
    return dict.fromkeys(lots, 0) | {row[0]: row[1] for row in found}


class BarsWith(NamedTuple):
    """Bars that one customer has, or that one note says were given to somebody not on the books."""

    customer_id: int | None
    note: str | None
    bars: int
    last_on: date
    codes: tuple[str, ...]


def bars_with(rows: sqlite3.Connection, lots: Collection[int]) -> list[BarsWith]:
    """Who has bars of some lots: the customers who did not give all of theirs back, then the gifts to others."""
    customers = """
        SELECT v.customer_id, NULL, -sum(v.quantity) AS bars, max(v."on"), group_concat(DISTINCT l.code)
        FROM movement v JOIN lot l ON l.id = v.lot_id
        WHERE v.customer_id IS NOT NULL AND v.lot_id IN (SELECT value FROM json_each(?))
        GROUP BY v.customer_id HAVING bars > 0
    """
    others = """
        SELECT NULL, v.note, -sum(v.quantity), max(v."on"), group_concat(DISTINCT l.code)
        FROM live_movement v JOIN lot l ON l.id = v.lot_id
        WHERE v.kind = 'given' AND v.customer_id IS NULL AND v.lot_id IN (SELECT value FROM json_each(?))
        GROUP BY v.note
    """
    asked = (json.dumps(sorted({*lots})),)
    return [
        BarsWith(who, note, bars, day(last), tuple(sorted(codes.split(","))))
        for query in (customers, others)
        for who, note, bars, last, codes in rows.execute(query, asked)
    ]


class Standing(NamedTuple):
    """Bars of one lot at a place, and the last day some were brought there."""

    lot_id: int
    bars: int
    out_on: date


def standing_at(rows: sqlite3.Connection, place_id: int) -> list[Standing]:
    """What stands at a place now, by the lot."""
    found = rows.execute(
        'SELECT lot_id, sum(quantity) AS bars, max(CASE WHEN quantity > 0 THEN "on" END) FROM movement '
        "WHERE place_id = ? GROUP BY lot_id HAVING bars > 0 ORDER BY lot_id",
        (place_id,),
    )
    return [Standing(row[0], row[1], day(row[2])) for row in found]


def bars_out(
    rows: sqlite3.Connection, lot_id: int, customer_id: int | None, place_id: int | None, on: date | None
) -> int:
    """Bars of a lot that are with a customer, or were sold and did not come back; up to a day when one is given."""
    row = rows.execute(
        """
        SELECT coalesce(-sum(quantity), 0) FROM movement WHERE lot_id = :lot AND customer_id IS :customer
        AND (:customer IS NOT NULL OR kind = 'returned'
             OR (kind IN ('sold', 'given') AND (:place IS NULL OR place_id = :place)))
        AND (:on IS NULL OR "on" <= :on)
        """,
        {"lot": lot_id, "customer": customer_id, "place": place_id, "on": on and on.isoformat()},
    ).fetchone()
    return int(row[0])
