"""Orders: what was promised to whom by when, and what went out on it."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.rows.opened import day, maybe_day
from ledger.units.dates import show_date
from ledger.units.words import Verdict


class OrderRow(NamedTuple):
    """One order that counts, and who ended it where somebody did."""

    id: int
    entry: int
    customer_id: int
    on: date
    due_on: date
    note: str | None
    ended_on: date | None
    ended_by: str | None
    reason: str | None


class OrderLineRow(NamedTuple):
    """So many bars of a product, or of one batch of it, promised on an order and gone out on it."""

    order_id: int
    recipe_id: int
    recipe_code: str
    product: str
    batch_id: int | None
    batch: str | None
    bars: int
    price_minor: int | None  # of one, as it was said last
    gone: int = 0

    @property
    def open(self) -> int:
        """Bars still to go."""
        return max(0, self.bars - self.gone)


def orders(rows: sqlite3.Connection, *, customer_id: int | None = None, number: int | None = None) -> list[OrderRow]:
    """Every order that counts, by the day it is due; of one customer, or one by its number, where told."""
    found = rows.execute(
        """
        SELECT o.id, o.entry_id, o.customer_id, o."on", o.due_on, o.note, e."on", e.by, e.reason
        FROM live_customer_order o
        LEFT JOIN live_order_end e ON e.id = (SELECT max(id) FROM live_order_end WHERE order_id = o.id)
        WHERE (?1 IS NULL OR o.customer_id = ?1) AND (?2 IS NULL OR o.id = ?2) ORDER BY o.due_on, o.id
        """,
        (customer_id, number),
    )
    return [
        OrderRow(row[0], row[1], row[2], day(row[3]), day(row[4]), row[5], maybe_day(row[6]), row[7], row[8])
        for row in found
    ]


def open_order(rows: sqlite3.Connection, number: int) -> OrderRow:
    """An order that nobody ended. Raises BadInput for one that is not there, Refused for one that was ended."""
    found = orders(rows, number=number)
    if not found:
        raise BadInput(f"There is no order {number}; see them all: soapledger order list --all")
    if found[0].ended_on:
        raise Refused(f"Order {number} was ended on {show_date(found[0].ended_on)} by {found[0].ended_by}.")
    return found[0]


# Bars that went to a shop on sale or return are no sale: lines below zero of their dispatch tell that they went.
_LINES = """
SELECT n.order_id, n.recipe_id, r.code, v.name, coalesce(n.batch_id, l.batch_id) AS batch, b.code,
       sum(CASE WHEN e.verb = 'dispatch' THEN 0 ELSE n.bars END) AS bars,
       (SELECT p.price_minor FROM live_order_line p LEFT JOIN lot q ON q.id = p.lot_id
        WHERE p.order_id = n.order_id AND p.recipe_id = n.recipe_id AND p.price_minor IS NOT NULL
          AND coalesce(p.batch_id, q.batch_id) IS coalesce(n.batch_id, l.batch_id) ORDER BY p.id DESC LIMIT 1),
       -sum(CASE WHEN e.verb = 'dispatch' THEN n.bars ELSE 0 END) AS gone
FROM live_order_line n JOIN live_customer_order o ON o.id = n.order_id JOIN entry e ON e.id = n.entry_id
LEFT JOIN lot l ON l.id = n.lot_id
LEFT JOIN batch b ON b.id = coalesce(n.batch_id, l.batch_id)
JOIN recipe r ON r.id = n.recipe_id
JOIN live_recipe_version v ON v.id = (SELECT max(id) FROM live_recipe_version WHERE recipe_id = r.id)
WHERE {}
GROUP BY n.order_id, n.recipe_id, batch ORDER BY n.order_id, min(n.id)
"""
# Bars that went out on an order, by the product and the batch they were of; a dispatch that was undone is none. CROSS:
# from the sales on an order to their lines, not from every line that was ever sold.
_GONE = """
SELECT s.order_id, v.recipe_id, l.batch_id, sum(n.bars)
FROM live_sale s CROSS JOIN live_sale_line n ON n.sale_id = s.id AND n.lot_id IS NOT NULL
JOIN lot l ON l.id = n.lot_id JOIN batch b ON b.id = l.batch_id JOIN recipe_version v ON v.id = b.recipe_version_id
WHERE {} AND s.kind = 'sale'
GROUP BY s.order_id, v.recipe_id, l.batch_id ORDER BY min(n.id)
"""


def order_lines(
    rows: sqlite3.Connection, number: int | None = None, *, among: Collection[int] | None = None
) -> dict[int, list[OrderLineRow]]:
    """What is promised on every order, on one or on some, by its number; with what went out on it.

    Bars of a batch fill what was promised of that batch first, and what is above it the product's own line.
    """
    asked = {"number": number, "among": json.dumps(sorted(among)) if among is not None else None}
    which = ""
    if number is not None:
        which = "= :number"
    elif among is not None:
        which = "IN (SELECT value FROM json_each(:among))"
    gone: dict[tuple[int, int], dict[int | None, int]] = {}
    for order, recipe, batch, bars in rows.execute(_GONE.format(f"s.order_id {which or 'IS NOT NULL'}"), asked):
        gone.setdefault((order, recipe), {})[batch] = bars
    found: dict[int, list[OrderLineRow]] = {}
    for row in rows.execute(_LINES.format(f"n.order_id {which}" if which else "1"), asked):
        found.setdefault(row[0], []).append(OrderLineRow(*row))
    for order, lines in found.items():
        filled = []
        for line in sorted(lines, key=lambda one: one.batch_id is None):
            left = gone.get((order, line.recipe_id), {})
            if line.batch_id is None:
                taken = sum(left.values())
                left.clear()
            else:
                taken = min(line.bars - line.gone, left.get(line.batch_id, 0))
                left[line.batch_id] = left.get(line.batch_id, 0) - taken
            filled.append(line._replace(gone=line.gone + taken))
        kept = {(one.recipe_id, one.batch_id): one for one in filled}
        found[order] = [kept[one.recipe_id, one.batch_id] for one in lines]
    return found


class BarsToCome(NamedTuple):
    """Bars of a product in the workshop, and the decision that stands last about them; None: they cure."""

    recipe_id: int
    batch_id: int
    lot_id: int
    bars: int
    verdict: Verdict | None


def bars_to_promise(rows: sqlite3.Connection, recipes: Collection[int]) -> list[BarsToCome]:
    """Bars of some products as they stand in the workshop, the oldest first."""
    found = rows.execute(
        """
        SELECT h.recipe, b.id, l.id, h.bars,
          (SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id ORDER BY d.id DESC LIMIT 1)
        FROM (  -- what is left of a lot first: of nearly all that were ever made nothing is
          SELECT v.recipe_id AS recipe, b.id AS batch, l.id AS lot, sum(m.quantity) AS bars
          FROM json_each(?) w CROSS JOIN recipe_version v ON v.recipe_id = w.value
          CROSS JOIN batch b ON b.recipe_version_id = v.id CROSS JOIN lot l ON l.batch_id = b.id
          CROSS JOIN place p ON p.kind = 'workshop' CROSS JOIN movement m ON m.lot_id = l.id AND m.place_id = p.id
          GROUP BY l.id HAVING bars > 0) h
        CROSS JOIN live_batch b ON b.id = h.batch
        CROSS JOIN live_lot l ON l.id = h.lot AND l.material_id = b.material_id
        JOIN material t ON t.id = l.material_id AND t.kind = 'soap' ORDER BY l."on", l.id
        """,
        (json.dumps(sorted({*recipes})),),
    )
    return [BarsToCome(*row) for row in found]
