"""The density of fresh dough as her own batches gave it, in place of the usual figure."""

import sqlite3
from fractions import Fraction


def own_density(rows: sqlite3.Connection, recipe_code: str) -> int | None:
    """Mass over volume of the batches of a recipe whose dough was measured, in mg per mL; None before there is one.

    The volume is the reading 'dough volume'; the mass is all that was weighed in, wrapping apart.
    """
    row = rows.execute(
        """
        SELECT sum(mass) AS mass, sum(volume) AS volume FROM (
          SELECT g.value AS volume,
                 (SELECT -sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id
                  JOIN material m ON m.id = l.material_id
                  WHERE v.batch_id = b.id AND v.kind = 'consumed' AND m.kind <> 'packaging') AS mass
          FROM live_batch b JOIN recipe_version w ON w.id = b.recipe_version_id JOIN recipe r ON r.id = w.recipe_id
          JOIN live_reading g
            ON g.id = (SELECT max(id) FROM live_reading WHERE batch_id = b.id AND what = 'dough volume')
          WHERE r.code = ? AND b.process IN ('cold', 'hot'))
        """,
        (recipe_code,),
    ).fetchone()
    if not row["volume"]:
        return None
    return round(Fraction(row["mass"] * 1000, row["volume"]))
