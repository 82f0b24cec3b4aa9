"""Where the bars of a batch are, and where the others went; the figures every answer is made of."""

import json
import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.rows.opened import day


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
