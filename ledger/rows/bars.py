"""Bars: where they are, which way the others went, and what was put back on sale."""

import json
import sqlite3
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day
from ledger.units.dates import show_date


@dataclass(frozen=True)
class BarCount:
    """Bars of one lot at one place, or gone one way on one day."""

    lot_id: int
    # on hand, at a stall, at a shop, retained, returned, sold, dispatched, given, wasted, reworked, missing at a count
    where: str
    detail: str  # the place, the stall, the customer, the reason
    on: date | None
    count: int
    left: bool
    customer_id: int | None


_HERE = {
    "workshop": "on hand",
    "stall": "at a stall",
    "consignment": "at a shop",
    "retained": "retained",
    "returns": "returned",
}


_COUNTED = "found at a count"
_WAYS = {"counted": "missing at a count", "consumed": "reworked"}


def bar_counts(rows: sqlite3.Connection, lot_ids: Sequence[int]) -> tuple[BarCount, ...]:
    """Every bar of some lots, by place for those that are here and by way for those that went.

    The lots stand in the order they were asked for; two statements, however many they are.
    """
    found: dict[int, list[BarCount]] = {lot_id: [] for lot_id in lot_ids}
    asked = (json.dumps(list(found)),)
    here = rows.execute(
        "SELECT v.lot_id, p.kind, p.name, p.customer_id, sum(v.quantity) AS held "
        "FROM json_each(?) w CROSS JOIN movement v ON v.lot_id = w.value JOIN place p ON p.id = v.place_id "
        "GROUP BY v.lot_id, p.id HAVING held <> 0 ORDER BY v.lot_id, p.id",
        asked,
    )
    for row in here:
        one = BarCount(row["lot_id"], _HERE[row["kind"]], row["name"], None, row["held"], False, row["customer_id"])
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
        if kind == _WAYS["counted"] and detail == _COUNTED:
            detail = ""  # what a count's note says where she wrote none
        one = BarCount(row["lot_id"], kind, detail, day(row["on"]), row["gone"], True, row["customer_id"])
        found[row["lot_id"]].append(one)
    return tuple(one for counts in found.values() for one in counts)


def still_out(counts: Sequence[BarCount]) -> tuple[BarCount, ...]:
    """The counts without the bars that customers sent back: off what was sent last, since nobody said of which."""
    back = Counter[int | None]()
    for one in counts:
        if one.left and one.where == "returned":
            back[one.customer_id] -= one.count  # what came back stands below zero among what went
    found = []
    for one in reversed(counts):
        if one.where == "dispatched":
            came = min(one.count, back[one.customer_id])
            back[one.customer_id] -= came
            one = replace(one, count=one.count - came)
        if one.count > 0:
            found.append(one)
    return tuple(reversed(found))


def still_about(rows: sqlite3.Connection, codes: Collection[str]) -> dict[str, int]:
    """The row numbers of those of some lots, by their codes, of which some stand anywhere but among the samples."""
    found = rows.execute(
        """
        SELECT l.code, l.id FROM json_each(?) w CROSS JOIN live_lot l ON l.code = w.value
        WHERE EXISTS (SELECT 1 FROM movement v JOIN place p ON p.id = v.place_id
          WHERE v.lot_id = l.id AND p.kind <> 'retained' GROUP BY v.place_id HAVING sum(v.quantity) <> 0)
        """,
        (json.dumps(sorted({*codes})),),
    )
    return {row[0]: row[1] for row in found}


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
        FROM json_each(?) w CROSS JOIN place p ON p.kind = 'returns'  -- not over all that a drum ever gave
        CROSS JOIN live_movement v ON v.lot_id = w.value AND v.place_id = p.id JOIN lot l ON l.id = v.lot_id
        WHERE v.kind = 'moved' AND v.quantity < 0 AND NOT EXISTS (
          SELECT 1 FROM movement k WHERE k.entry_id = v.entry_id AND k.lot_id = v.lot_id AND k.place_id = v.place_id
            AND k.quantity = -v.quantity)
        ORDER BY v."on", v.id
        """,
        (json.dumps(list(lot_ids)),),
    )
    return tuple(
        BackOnSale(row["code"], row["bars"], day(row["on"]), str(row["note"]).removeprefix("back on sale, "))
        for row in found
    )


class OnTheShelf(NamedTuple):
    """Bars of one batch that came back and of which somebody decided that they stay there, or are thrown away."""

    batch_code: str
    bars: int
    on: date
    kept: bool
    why: str  # who decided, and the reason

    @property
    def words(self) -> str:
        """The same in words."""
        bars = "1 bar" if self.bars == 1 else f"{self.bars} bars"
        done = "kept on the returns shelf" if self.kept else "thrown away from the returns shelf"
        return f"{bars} {done} on {show_date(self.on)} ({self.why})"


def decided_on_the_shelf(rows: sqlite3.Connection, lot_ids: Sequence[int]) -> tuple[OnTheShelf, ...]:
    """Every time bars of some lots were kept on the returns shelf or thrown away from it, oldest first."""
    found = rows.execute(
        """
        SELECT l.code, -v.quantity AS bars, v."on", v.kind = 'moved' AS kept, v.note
        FROM json_each(?) w CROSS JOIN place p ON p.kind = 'returns'
        CROSS JOIN live_movement v ON v.lot_id = w.value AND v.place_id = p.id JOIN lot l ON l.id = v.lot_id
        WHERE v.quantity < 0 AND (v.kind = 'wasted' OR (v.kind = 'moved' AND EXISTS (
          SELECT 1 FROM movement k WHERE k.entry_id = v.entry_id AND k.lot_id = v.lot_id AND k.place_id = v.place_id
            AND k.quantity = -v.quantity)))
        ORDER BY v."on", v.id
        """,
        (json.dumps(list(lot_ids)),),
    )
    return tuple(
        OnTheShelf(
            row["code"],
            row["bars"],
            day(row["on"]),
            bool(row["kept"]),
            str(row["note"]).removeprefix("kept, ").removeprefix("thrown away, "),
        )
        for row in found
    )


def in_the_order_made(code: str) -> tuple[str, int, str]:
    """26-1002-9 comes after 26-999-0."""
    year, _, number = code.partition("-")
    return year, len(number), number


class BarsWith(NamedTuple):
    """Bars that one customer has, or that one note says were given to somebody not on the books."""

    customer_id: int | None
    note: str | None
    bars: int
    last_on: date  # that some went there
    codes: tuple[str, ...]


def bars_with(rows: sqlite3.Connection, lots: Collection[int]) -> list[BarsWith]:
    """Who has bars of some lots: the customers who did not give all of a lot back, then the gifts to others.

    A shop has those that stand there and are hers, and those that it sold on at a count.
    """
    customers = """
        SELECT customer_id, NULL, sum(bars), max(last), group_concat(code) FROM (
          SELECT customer_id, l.code, sum(bars) AS bars, max(last) AS last FROM (
            SELECT v.customer_id, v.lot_id, -v.quantity AS bars, CASE WHEN v.quantity < 0 THEN v."on" END AS last
            FROM json_each(?1) w CROSS JOIN live_movement v ON v.lot_id = w.value WHERE v.customer_id IS NOT NULL
            UNION ALL
            SELECT p.customer_id, v.lot_id, v.quantity, CASE WHEN v.quantity > 0 THEN v."on" END FROM json_each(?1) w
            CROSS JOIN live_movement v ON v.lot_id = w.value JOIN place p ON p.id = v.place_id
            WHERE p.customer_id IS NOT NULL) h
          JOIN lot l ON l.id = h.lot_id GROUP BY customer_id, h.lot_id HAVING sum(bars) > 0)
        GROUP BY customer_id
    """
    others = """
        SELECT NULL, v.note, -sum(v.quantity), max(v."on"), group_concat(DISTINCT l.code)
        FROM json_each(?1) w CROSS JOIN live_movement v ON v.lot_id = w.value JOIN lot l ON l.id = v.lot_id
        WHERE v.kind = 'given' AND v.customer_id IS NULL GROUP BY v.note
    """
    asked = (json.dumps(sorted({*lots})),)
    return [
        BarsWith(who, note, bars, day(last), tuple(sorted(codes.split(","), key=in_the_order_made)))
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
