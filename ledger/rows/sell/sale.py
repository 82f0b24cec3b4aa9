"""Sales: what changed hands, with its lines, and what was taken for bars in all."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day, maybe_day
from ledger.units.words import LineKind, SaleKind


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


def sales_found(
    rows: sqlite3.Connection,
    *,
    place_id: int | None = None,
    customer_id: int | None = None,
    since: date | None = None,
    until: date | None = None,
    last: int | None = None,
) -> list[SaleRow]:
    """The last so many sales, returns and credits at an outlet and between two days, where told; by their days."""
    query = _SALE + (
        "WHERE (:place IS NULL OR s.place_id = :place) AND (:customer IS NULL OR :customer IN (s.customer_id, "
        'p.customer_id)) AND s."on" >= coalesce(:since, s."on") AND s."on" <= coalesce(:until, s."on") '
        'ORDER BY s."on" DESC, s.id DESC LIMIT :last'
    )
    asked = {
        "place": place_id,
        "customer": customer_id,
        "since": since and since.isoformat(),
        "until": until and until.isoformat(),
        "last": -1 if last is None else last,
    }
    return [_sale(row) for row in rows.execute(query, asked)][::-1]


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
    place_id: int | None
    customer_id: int | None
    bars: int
    money_minor: int
    tax_minor: int
    entry: int


# An amount stands on the line of a sale or, from programs that knew none, on the movement itself; never on both.
_TAKEN = """
SELECT v.lot_id, v."on", v.place_id, v.customer_id, -v.quantity, v.money_minor, 0, v.entry_id
FROM json_each(:lots) w CROSS JOIN live_movement v ON v.lot_id = w.value AND v.money_minor IS NOT NULL
UNION ALL
SELECT n.lot_id, s."on", s.place_id, s.customer_id, n.bars, n.gross_minor - n.reduction_minor,
       coalesce(n.tax_minor, 0), n.entry_id
FROM json_each(:lots) w CROSS JOIN live_sale_line n ON n.lot_id = w.value AND n.gross_minor IS NOT NULL
JOIN sale s ON s.id = n.sale_id
"""


def taken_for(rows: sqlite3.Connection, lots: Collection[int]) -> list[Taken]:
    """What was taken for the bars of some lots, by the day."""
    found = rows.execute(_TAKEN + " ORDER BY 2, 8", {"lots": json.dumps(sorted({*lots}))})
    return [Taken(*row)._replace(on=day(row[1])) for row in found]


def booked_since(
    rows: sqlite3.Connection, moment: str, on: date, *, place_id: int | None, customer_id: int | None
) -> list[int]:
    """The sales of a day at an outlet that were written at a UTC moment or later and count, the latest first."""
    found = rows.execute(
        "SELECT s.id FROM live_sale s JOIN entry e ON e.id = s.entry_id WHERE e.recorded_at >= ? AND s.kind = 'sale' "
        'AND s."on" = ? AND s.place_id IS ? AND s.customer_id IS ? ORDER BY s.id DESC',
        (moment, on.isoformat(), place_id, customer_id),
    )
    return [row[0] for row in found]


def brought_by_recipe(rows: sqlite3.Connection, recipes: Collection[int]) -> dict[int, list[tuple[int, int]]]:
    """What bars of some products brought each time they were sold: how many, and how much together; by the recipe."""
    found = rows.execute(
        """
        WITH made AS (SELECT l.id AS lot, v.recipe_id AS recipe FROM json_each(?) w
          CROSS JOIN recipe_version v ON v.recipe_id = w.value CROSS JOIN batch b ON b.recipe_version_id = v.id
          CROSS JOIN lot l ON l.batch_id = b.id)
        SELECT m.recipe, n.bars, n.gross_minor - n.reduction_minor FROM made m
        CROSS JOIN live_sale_line n ON n.lot_id = m.lot AND n.bars > 0 AND n.gross_minor > 0
        UNION ALL
        SELECT m.recipe, -v.quantity, v.money_minor FROM made m
        CROSS JOIN live_movement v ON v.lot_id = m.lot AND v.money_minor > 0 AND v.quantity < 0
        """,
        (json.dumps(sorted({*recipes})),),
    )
    brought: dict[int, list[tuple[int, int]]] = {recipe: [] for recipe in recipes}
    for recipe, bars, amount in found:
        brought[recipe].append((bars, amount))
    return brought


def brought_lately(rows: sqlite3.Connection) -> list[tuple[int, int]]:
    """What the last hundred lines of bars brought, of any product: how many, and how much together."""
    found = rows.execute(
        "SELECT n.bars, n.gross_minor - n.reduction_minor FROM live_sale_line n "
        "WHERE n.kind = 'bars' AND n.bars > 0 AND n.gross_minor > 0 ORDER BY n.id DESC LIMIT 100"
    )
    return [(row[0], row[1]) for row in found]
