"""Where bars and everything else went: the movements, counted by place and by way, and the graph they make."""

import json
import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.stock.graph import Graph
from ledger.rows.opened import day
from ledger.units.dates import show_date


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


def bars_here(rows: sqlite3.Connection, lot_id: int, on: date) -> int:
    """The bars of a lot that are in the workshop on a day."""
    row = rows.execute(
        "SELECT coalesce(sum(v.quantity), 0) FROM movement v JOIN place p ON p.id = v.place_id "
        "WHERE v.lot_id = ? AND p.kind = 'workshop' AND v.\"on\" <= ?",
        (lot_id, on.isoformat()),
    ).fetchone()
    return int(row[0])


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


@dataclass(frozen=True)
class BackOnSale:
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
        SELECT l.code, -v.quantity AS bars, v."on", v.note FROM live_movement v
        JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
        WHERE p.kind = 'returns' AND v.kind = 'moved' AND v.quantity < 0
          AND v.lot_id IN (SELECT value FROM json_each(?)) ORDER BY v."on", v.id
        """,
        (json.dumps(list(lot_ids)),),
    )
    return tuple(
        BackOnSale(row["code"], row["bars"], day(row["on"]), str(row["note"]).removeprefix("back on sale, "))
        for row in found
    )


def ledger_graph(rows: sqlite3.Connection) -> Graph:
    """Every edge that still holds: a batch and a lot whose movements do not cancel."""
    edges = rows.execute(
        """
        SELECT batch_id, lot_id,
               sum(CASE kind WHEN 'consumed' THEN quantity ELSE 0 END) AS consumed,
               sum(CASE kind WHEN 'yielded' THEN quantity ELSE 0 END) AS yielded
        FROM movement WHERE batch_id IS NOT NULL GROUP BY batch_id, lot_id ORDER BY batch_id, lot_id
        """
    ).fetchall()
    return Graph(
        consumed=[(row["lot_id"], row["batch_id"]) for row in edges if row["consumed"]],
        yielded=[(row["batch_id"], row["lot_id"]) for row in edges if row["yielded"]],
    )
