"""Bars in the workshop, and what of them is promised."""

import sqlite3


def in_workshop(rows: sqlite3.Connection) -> dict[int, int]:
    """The bars of each lot of soap that stand in the workshop now, by its row number."""
    found = rows.execute(
        "SELECT l.id, sum(v.quantity) FROM material m JOIN lot l ON l.material_id = m.id "
        "JOIN movement v ON v.lot_id = l.id JOIN place p ON p.id = v.place_id AND p.kind = 'workshop' "
        "WHERE m.kind = 'soap' GROUP BY l.id HAVING sum(v.quantity) > 0"
    )
    return {row[0]: row[1] for row in found}


def promised(rows: sqlite3.Connection) -> dict[int, int]:
    """The bars that open orders still wait for, by product; those of one batch that is still to come are left out."""
    found = rows.execute(
        """
        WITH asked AS (
          SELECT o.id, n.recipe_id, sum(n.bars) AS bars FROM live_customer_order o
          JOIN live_order_line n ON n.order_id = o.id
          WHERE n.batch_id IS NULL AND NOT EXISTS (SELECT 1 FROM live_order_end e WHERE e.order_id = o.id)
          GROUP BY o.id, n.recipe_id),
        filled AS (
          SELECT s.order_id, v.recipe_id, sum(n.bars) AS bars FROM live_sale s
          JOIN live_sale_line n ON n.sale_id = s.id JOIN lot l ON l.id = n.lot_id JOIN batch b ON b.id = l.batch_id
          JOIN recipe_version v ON v.id = b.recipe_version_id
          WHERE s.order_id IS NOT NULL GROUP BY s.order_id, v.recipe_id)
        SELECT a.recipe_id, sum(max(0, a.bars - coalesce(f.bars, 0))) FROM asked a
        LEFT JOIN filled f ON f.order_id = a.id AND f.recipe_id = a.recipe_id GROUP BY a.recipe_id
        """
    )
    return {row[0]: row[1] for row in found}
