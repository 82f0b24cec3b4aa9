"""What customers had, by the product."""

import sqlite3
from typing import NamedTuple


class HadOf(NamedTuple):
    """Bars of one product that went to a customer, by the way they went, and those that came back."""

    product: str
    sold: int
    given: int
    returned: int


def had_of_products(rows: sqlite3.Connection, customer_id: int) -> list[HadOf]:
    """What a customer had of each product, by its name."""
    found = rows.execute(
        """
        SELECT mr.name, sum(CASE WHEN v.kind IN ('sold', 'dispatched') THEN -v.quantity ELSE 0 END),
               sum(CASE v.kind WHEN 'given' THEN -v.quantity ELSE 0 END),
               sum(CASE v.kind WHEN 'returned' THEN v.quantity ELSE 0 END)
        FROM live_movement v JOIN lot l ON l.id = v.lot_id
        JOIN live_material_revision mr
          ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
        WHERE v.customer_id = ? GROUP BY l.material_id ORDER BY mr.name COLLATE NOCASE
        """,
        (customer_id,),
    )
    return [HadOf(*row) for row in found]


def sales_of(rows: sqlite3.Connection, customer_id: int) -> list[int]:
    """The sales to a customer that count, by their numbers; returns and credits go by them."""
    query = "SELECT id FROM live_sale WHERE customer_id = ? AND kind = 'sale' ORDER BY id"
    return [row[0] for row in rows.execute(query, (customer_id,))]
