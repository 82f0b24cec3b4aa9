"""What is left of the lines of sales, for a return or a credit to take from."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day
from ledger.units.words import LineKind


class LineLeft(NamedTuple):
    """One line of a sale and what no return or credit took from it yet; no amount where it was never told."""

    id: int
    sale_id: int
    on: date
    kind: LineKind
    lot_id: int | None
    bars: int
    amount_minor: int | None
    tax_ppm: int | None
    left_bars: int
    left_minor: int | None
    left_tax_minor: int | None


_LEFT = """
SELECT n.id, n.sale_id, s."on", n.kind, n.lot_id, n.bars, n.gross_minor - n.reduction_minor AS amount, n.tax_ppm,
       n.bars + coalesce(sum(t.bars), 0),
       n.gross_minor - n.reduction_minor + coalesce(sum(t.gross_minor - t.reduction_minor), 0),
       n.tax_minor + coalesce(sum(t.tax_minor), 0)
FROM live_sale s JOIN live_sale_line n ON n.sale_id = s.id LEFT JOIN live_sale_line t ON t.of_line_id = n.id
WHERE s.kind = 'sale' AND {} GROUP BY n.id ORDER BY s."on" DESC, n.sale_id DESC, n.id DESC
"""


def _lines(rows: sqlite3.Connection, among: str, asked: dict[str, object]) -> list[LineLeft]:
    return [LineLeft(*row)._replace(on=day(row[2])) for row in rows.execute(_LEFT.format(among), asked)]


def left_of_sale(rows: sqlite3.Connection, sale: int) -> list[LineLeft]:
    """The lines of a sale with what is left of them, in the order they were written."""
    return sorted(_lines(rows, "s.id = :sale", {"sale": sale}), key=lambda line: line.id)


def left_at(
    rows: sqlite3.Connection, lots: Collection[int], *, place_id: int | None, customer_id: int | None, on: date
) -> list[LineLeft]:
    """What is left of the lines of some lots' bars that were sold by a day, the latest first.

    Sold to a customer, or at a place, or, where neither is told, to whoever is no customer on the books.
    """
    asked: dict[str, object] = {
        "lots": json.dumps(sorted({*lots})),
        "place": place_id,
        "customer": customer_id,
        "on": on.isoformat(),
    }
    return _lines(
        rows,
        "n.lot_id IN (SELECT value FROM json_each(:lots)) AND s.customer_id IS :customer "
        "AND (:customer IS NOT NULL OR :place IS NULL OR s.place_id = :place) "
        'AND s."on" <= :on',
        asked,
    )


def sale_of_lines(rows: sqlite3.Connection, lines: Collection[int]) -> dict[int, int]:
    """The sale that each of some lines is of, by the line."""
    query = "SELECT n.id, n.sale_id FROM json_each(?) w CROSS JOIN sale_line n ON n.id = w.value"
    return {row[0]: row[1] for row in rows.execute(query, (json.dumps(sorted({*lines})),))}


class SoldBefore(NamedTuple):
    """Bars that a program sold which kept no sales: the amount stands on the movement."""

    bars: int
    amount_minor: int | None


def sold_before(
    rows: sqlite3.Connection, lot: int, *, place_id: int | None, customer_id: int | None, on: date
) -> tuple[list[SoldBefore], int]:
    """Bars of a lot sold at an outlet by a day with no line of a sale, the latest first; and how many came back so."""
    asked = {"lot": lot, "place": place_id, "customer": customer_id, "on": on.isoformat()}
    found = rows.execute(
        """
        SELECT -v.quantity, v.money_minor FROM live_movement v
        WHERE v.lot_id = :lot AND v.kind IN ('sold', 'dispatched') AND v.customer_id IS :customer AND v."on" <= :on
          AND (:customer IS NOT NULL OR :place IS NULL OR v.place_id = :place)
          AND NOT EXISTS (SELECT 1 FROM live_sale_line n WHERE n.movement_id = v.id)
        ORDER BY v."on" DESC, v.id DESC
        """,
        asked,
    )
    sold = [SoldBefore(*row) for row in found]
    back = rows.execute(
        """
        SELECT coalesce(sum(v.quantity), 0) FROM live_movement v
        WHERE v.lot_id = :lot AND v.kind = 'returned' AND v.customer_id IS :customer
          AND NOT EXISTS (SELECT 1 FROM live_sale_line n WHERE n.movement_id = v.id AND n.of_line_id IS NOT NULL)
        """,
        asked,
    ).fetchone()[0]
    return sold, back
