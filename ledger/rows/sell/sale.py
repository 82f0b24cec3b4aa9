"""Sales: what changed hands, with its lines, and what was taken for bars in all."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day, maybe_day
from ledger.units.words import LineKind, SaleKind, Way


class SaleRow(NamedTuple):
    """One sale, return or credit that counts."""

    id: int
    entry: int
    on: date
    kind: SaleKind
    place_id: int | None
    place: str | None
    customer_id: int | None
    order_id: int | None
    whom: str | None
    terms: str | None
    pay_by: date | None


_SALE = """
SELECT s.id, s.entry_id, s."on", s.kind, s.place_id, p.name, s.customer_id, s.order_id, s.whom, s.terms, s.pay_by
FROM live_sale s LEFT JOIN place p ON p.id = s.place_id
"""


def _sale(row: sqlite3.Row) -> SaleRow:
    return SaleRow(*row)._replace(on=day(row["on"]), pay_by=maybe_day(row["pay_by"]))


def sales(rows: sqlite3.Connection) -> list[SaleRow]:
    """Every sale, return and credit that counts, by its day."""
    return [_sale(row) for row in rows.execute(_SALE + ' ORDER BY s."on", s.id')]


def sales_by_id(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, SaleRow]:
    """Some of them by their row numbers."""
    query = _SALE + " WHERE s.id IN (SELECT value FROM json_each(?))"
    return {row["id"]: _sale(row) for row in rows.execute(query, (json.dumps(sorted({*numbers})),))}


class LineRow(NamedTuple):
    """One line of a sale; its amount is gross less the reduction, any tax within, and None where it was never told."""

    id: int
    entry: int
    sale_id: int
    kind: LineKind
    lot_id: int | None
    batch: str | None
    product: str | None
    movement_id: int | None
    of_line_id: int | None
    bars: int
    gross_minor: int | None
    reduction_minor: int
    tax_ppm: int | None
    tax_minor: int | None
    words: str | None

    @property
    def amount_minor(self) -> int | None:
        """What the line brought."""
        return None if self.gross_minor is None else self.gross_minor - self.reduction_minor


def lines_of(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, list[LineRow]]:
    """The lines of some sales that count, by the sale, in the order they were written."""
    found = rows.execute(
        """
        SELECT n.id, n.entry_id, n.sale_id, n.kind, n.lot_id, l.code, mr.name, n.movement_id, n.of_line_id, n.bars,
               n.gross_minor, n.reduction_minor, n.tax_ppm, n.tax_minor, n.words
        FROM json_each(?) w CROSS JOIN live_sale_line n ON n.sale_id = w.value
        LEFT JOIN lot l ON l.id = n.lot_id
        LEFT JOIN live_material_revision mr
          ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
        ORDER BY n.sale_id, n.id
        """,
        (json.dumps(sorted({*numbers})),),
    )
    lines: dict[int, list[LineRow]] = {number: [] for number in numbers}
    for row in found:
        lines[row["sale_id"]].append(LineRow(*row))
    return lines


class Taken(NamedTuple):
    """What bars of one lot brought on a day at an outlet, whichever program booked it; below zero: given back."""

    lot_id: int
    on: date
    way: Way
    place_id: int | None
    customer_id: int | None
    bars: int
    money_minor: int
    tax_minor: int
    entry: int


# An amount stands on the line of a sale or, from programs that knew none, on the movement itself; never on both.
_TAKEN = """
SELECT v.lot_id, v."on", v.kind, v.place_id, v.customer_id, -v.quantity, v.money_minor, 0, v.entry_id
FROM json_each(:lots) w CROSS JOIN live_movement v ON v.lot_id = w.value AND v.money_minor IS NOT NULL
UNION ALL
SELECT n.lot_id, s."on", CASE s.kind WHEN 'sale' THEN coalesce(v.kind, 'sold') ELSE 'returned' END, s.place_id,
       s.customer_id, n.bars, n.gross_minor - n.reduction_minor, coalesce(n.tax_minor, 0), n.entry_id
FROM json_each(:lots) w CROSS JOIN live_sale_line n ON n.lot_id = w.value AND n.gross_minor IS NOT NULL
JOIN sale s ON s.id = n.sale_id LEFT JOIN movement v ON v.id = n.movement_id
"""


def taken_for(rows: sqlite3.Connection, lots: Collection[int]) -> list[Taken]:
    """What was taken for the bars of some lots, by the day."""
    found = rows.execute(_TAKEN + " ORDER BY 2, 9", {"lots": json.dumps(sorted({*lots}))})
    return [Taken(*row)._replace(on=day(row[1])) for row in found]


def amounts_by_movement(rows: sqlite3.Connection, movements: Collection[int]) -> dict[int, int]:
    """What the lines of sales say that some movements brought, in minor units; those with no amount are left out."""
    found = rows.execute(
        "SELECT n.movement_id, sum(n.gross_minor - n.reduction_minor) FROM json_each(?) w "
        "CROSS JOIN live_sale_line n ON n.movement_id = w.value WHERE n.gross_minor IS NOT NULL GROUP BY n.movement_id",
        (json.dumps(sorted({*movements})),),
    )
    return {row[0]: row[1] for row in found}
