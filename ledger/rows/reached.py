"""What a recall reaches: lots and batches downstream of some, read from what is reached and nothing else."""

import json
import sqlite3
from collections.abc import Collection, Mapping
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day
from ledger.units.words import MaterialKind, Process

# From each lot on to what batches gave that took of it, wherever the two movements that stand for it still count.
# `worn`: it was only wrapped in what is suspect. Wrapping is on bars and on nothing that is made of them: grated, they
# have it no more. Lots alone are in the set, no depth: of a way over many years each lot is looked at once or twice.
_REACH = """
WITH RECURSIVE node (lot, worn) AS (
  SELECT value, 0 FROM json_each(:lots) UNION SELECT value, 1 FROM json_each(:labelled)
  UNION SELECT y.lot_id, 0 FROM json_each(:batches) b CROSS JOIN movement y ON y.batch_id = b.value
    WHERE y.kind = 'yielded'
    AND (SELECT sum(quantity) FROM movement WHERE batch_id = y.batch_id AND lot_id = y.lot_id AND kind = 'yielded') <> 0
  UNION SELECT y.lot_id, n.worn OR m.kind = 'packaging'
  FROM node n CROSS JOIN lot l ON l.id = n.lot CROSS JOIN material m ON m.id = l.material_id
  CROSS JOIN movement v ON v.lot_id = n.lot CROSS JOIN movement y ON y.batch_id = v.batch_id
  CROSS JOIN lot g ON g.id = y.lot_id CROSS JOIN material k ON k.id = g.material_id
  WHERE v.kind = 'consumed' AND y.kind = 'yielded'
    AND (k.kind IN ('soap', 'packaging') OR NOT (n.worn OR m.kind = 'packaging'))
    AND (SELECT sum(quantity) FROM movement WHERE batch_id = v.batch_id AND lot_id = n.lot AND kind = 'consumed') <> 0
    AND (SELECT sum(quantity) FROM movement WHERE batch_id = v.batch_id AND lot_id = y.lot_id AND kind = 'yielded') <> 0
)
SELECT n.lot, min(n.worn), k.kind, l.mass_mg FROM node n CROSS JOIN lot l ON l.id = n.lot
CROSS JOIN material k ON k.id = l.material_id GROUP BY n.lot
"""
_TOOK = """
SELECT v.batch_id, v.lot_id, -sum(v.quantity) AS took FROM json_each(?) w CROSS JOIN movement v ON v.lot_id = w.value
WHERE v.kind = 'consumed' AND v.batch_id IS NOT NULL GROUP BY v.batch_id, v.lot_id HAVING took <> 0
"""
_GAVE = """
SELECT v.batch_id, v.lot_id, sum(v.quantity) AS gave, k.kind, l.mass_mg
FROM json_each(?) w CROSS JOIN movement v ON v.batch_id = w.value
CROSS JOIN lot l ON l.id = v.lot_id CROSS JOIN material k ON k.id = l.material_id
WHERE v.kind = 'yielded' GROUP BY v.batch_id, v.lot_id HAVING gave <> 0
"""
# What went into each batch, wrapping apart; of bars that were grated, what as many weighed at the cut.
_WHOLE = """
SELECT v.batch_id, b.process, sum(CASE k.kind WHEN 'packaging' THEN 0 WHEN 'soap' THEN
    v.quantity * coalesce(l.mass_mg, 0) / max(1, (SELECT sum(quantity) FROM movement WHERE lot_id = l.id AND
    kind = 'yielded')) ELSE v.quantity END)
FROM json_each(?) w CROSS JOIN batch b ON b.id = w.value CROSS JOIN movement v ON v.batch_id = w.value
CROSS JOIN lot l ON l.id = v.lot_id CROSS JOIN material k ON k.id = l.material_id
WHERE v.kind = 'consumed' GROUP BY v.batch_id
"""


class Given(NamedTuple):
    """What a batch gave into one lot, in mg, or in pieces with what all of them weighed."""

    lot_id: int
    quantity: int
    kind: MaterialKind
    mass_mg: int | None


class Reached(NamedTuple):
    """Lots with what they are, and the batches that took of them or were asked for, with what went in and came out."""

    lots: Mapping[int, tuple[MaterialKind, bool]]  # whether the suspect thing is only round them
    took: Mapping[int, Mapping[int, int]]  # by batch, then by lot; of lots that are reached
    gave: Mapping[int, tuple[Given, ...]]  # by batch; of lots that are reached
    whole: Mapping[int, tuple[Process, int]]  # by batch: the process, and all that went in, in mg


def reached(
    rows: sqlite3.Connection, lots: Collection[int], batches: Collection[int], labelled: Mapping[int, int]
) -> Reached:
    """Everything downstream of lots, of what batches gave, and of labels (batch to its bars), in four statements."""
    asked = {
        "lots": json.dumps([*lots]),
        "batches": json.dumps([*batches]),
        "labelled": json.dumps([*labelled.values()]),
    }
    found = {row[0]: (row[2], bool(row[1])) for row in rows.execute(_REACH, asked)}
    took: dict[int, dict[int, int]] = {number: {} for number in (*batches, *labelled)}
    followed = [lot for lot, (kind, worn) in found.items() if not (worn and kind == "soap")]
    for batch, lot, quantity in rows.execute(_TOOK, (json.dumps(followed),)):
        took.setdefault(batch, {})[lot] = quantity
    among = (json.dumps([*took]),)
    gave: dict[int, tuple[Given, ...]] = {}
    for batch, lot, quantity, kind, mass in rows.execute(_GAVE, among):
        if lot in found:
            gave[batch] = (*gave.get(batch, ()), Given(lot, quantity, kind, mass))
    return Reached(found, took, gave, {row[0]: (row[1], -row[2]) for row in rows.execute(_WHOLE, among)})


class Booked(NamedTuple):
    """What was booked of one lot, in mg or pieces, each as a number above zero where something went that way."""

    received: int  # or made
    into_batches: int
    returned: int
    wasted: int
    on_hand: int
    weighed: int  # how many movements there are that a scale stood behind

    @property
    def unexplained(self) -> int:
        """What is left over once everything that is told of it is taken off; below zero where more is told."""
        return self.received - self.into_batches - self.returned - self.wasted - self.on_hand


def booked(rows: sqlite3.Connection, lots: Collection[int]) -> dict[int, Booked]:
    """What was booked of lots, by their row numbers; what was taken back leaves nothing."""
    found = rows.execute(
        """
        SELECT v.lot_id,
          sum(CASE WHEN v.kind IN ('received', 'yielded') THEN v.quantity ELSE 0 END),
          -sum(CASE v.kind WHEN 'consumed' THEN v.quantity ELSE 0 END),
          -sum(CASE v.kind WHEN 'returned' THEN v.quantity ELSE 0 END),
          -sum(CASE v.kind WHEN 'wasted' THEN v.quantity ELSE 0 END), sum(v.quantity),
          sum(v.kind IN ('consumed', 'wasted', 'counted'))
        FROM json_each(?) w CROSS JOIN movement v ON v.lot_id = w.value GROUP BY v.lot_id
        """,
        (json.dumps(sorted({*lots})),),
    )
    return dict.fromkeys(lots, Booked(0, 0, 0, 0, 0, 0)) | {row[0]: Booked(*row[1:]) for row in found}


class NumberKept(NamedTuple):
    """A lot that came from a supplier with a number to learn, with what a notice could call it."""

    code: str
    material: str
    material_id: int
    supplier_id: int
    supplier_number: str | None
    on: date


def numbers_kept(rows: sqlite3.Connection) -> list[NumberKept]:
    """Every lot that was bought, in the order it came, for a number that is none of theirs."""
    found = rows.execute(
        """
        SELECT l.code, r.name, l.material_id, l.supplier_id, l.supplier_number, l."on" FROM live_lot l
        JOIN live_material_revision r ON r.id = (
          SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
        JOIN supplier s ON s.id = l.supplier_id WHERE l.supplier_number IS NOT NULL OR NOT s.own ORDER BY l.id
        """
    )
    return [NumberKept(row[0], row[1], row[2], row[3], row[4], day(row[5])) for row in found]


_TAKEN = """
SELECT v.lot_id, l.batch_id FROM json_each(?) w CROSS JOIN movement v ON v.batch_id = w.value
CROSS JOIN lot l ON l.id = v.lot_id
WHERE v.kind = 'consumed' GROUP BY v.lot_id, v.batch_id HAVING sum(v.quantity) <> 0
"""
# Down from one lot only so far, since what is in everything tells nothing.
_SHARES = """
WITH RECURSIVE node (lot) AS (
  SELECT :lot UNION
  SELECT y.lot_id FROM node n CROSS JOIN movement v ON v.lot_id = n.lot CROSS JOIN movement y ON y.batch_id = v.batch_id
  WHERE v.kind = 'consumed' AND y.kind = 'yielded'
    AND (SELECT sum(quantity) FROM movement WHERE batch_id = v.batch_id AND lot_id = n.lot AND kind = 'consumed') <> 0
  LIMIT :most)
SELECT l.batch_id, (SELECT count(*) FROM node) FROM node n CROSS JOIN lot l ON l.id = n.lot
CROSS JOIN material k ON k.id = l.material_id WHERE k.kind = 'soap' AND l.batch_id IS NOT NULL
"""


def lots_taken(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, int | None]:
    """The lots that batches took of, each with the batch that gave it, if one did."""
    return {row[0]: row[1] for row in rows.execute(_TAKEN, (json.dumps([*batches]),))}


def bars_sharing(rows: sqlite3.Connection, lot_id: int, most: int) -> list[int] | None:
    """The batches of bars that a lot is in, by their row numbers; None where it is in more things than so many."""
    found = rows.execute(_SHARES, {"lot": lot_id, "most": most}).fetchall()
    return None if found and found[0][1] >= most else sorted({row[0] for row in found})


def weighed_for_another(rows: sqlite3.Connection, material_id: int) -> list[int]:
    """The batches of which a line asks for another material, and this one is in."""
    found = rows.execute(
        """
        SELECT v.batch_id FROM lot l CROSS JOIN movement v ON v.lot_id = l.id CROSS JOIN plan_line p
          ON p.id = v.plan_line_id
        WHERE l.material_id = ? AND v.kind = 'consumed' AND p.material_id <> l.material_id
        GROUP BY v.batch_id, v.plan_line_id, v.lot_id HAVING sum(v.quantity) <> 0
        """,
        (material_id,),
    )
    return sorted({row[0] for row in found})


def batches_made_as(
    rows: sqlite3.Connection,
    *,
    material_id: int | None = None,
    recipe_id: int | None = None,
    version: int | None = None,
) -> list[int]:
    """The batches that give a product, or were planned from a recipe, or one version of it."""
    if material_id is not None:
        found = rows.execute("SELECT id FROM live_batch WHERE material_id = ? ORDER BY id", (material_id,))
    else:
        found = rows.execute(
            "SELECT b.id FROM recipe_version v CROSS JOIN live_batch b ON b.recipe_version_id = v.id "
            "WHERE v.recipe_id = ?1 AND ?2 IN (v.number, 0) ORDER BY b.id",
            (recipe_id, version or 0),
        )
    return [row[0] for row in found]
