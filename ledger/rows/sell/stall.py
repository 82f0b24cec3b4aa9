"""What was sold at stalls: the last sale, and how much of what went on which day."""

import sqlite3
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day


def last_sale_at(rows: sqlite3.Connection, place_id: int, on: date | None) -> int | None:
    """The last sale at a stall, of a day where one is given, by its row number."""
    row = rows.execute(
        'SELECT id FROM live_sale WHERE place_id = ? AND kind = \'sale\' AND "on" = coalesce(?, "on") '
        'ORDER BY "on" DESC, id DESC LIMIT 1',
        (place_id, on and on.isoformat()),
    ).fetchone()
    return row and int(row[0])


class SoldThere(NamedTuple):
    """Bars of one product sold at a stall on one day."""

    material_id: int
    on: date
    bars: int


def sold_at(rows: sqlite3.Connection, place_id: int, *, before: date, days: int) -> list[SoldThere]:
    """What was sold at a stall on its last days before one, by product and day, the latest day first."""
    found = rows.execute(
        """
        WITH there AS (SELECT * FROM live_movement WHERE place_id = :place AND kind = 'sold' AND "on" < :before),
             last AS (SELECT DISTINCT "on" FROM there ORDER BY "on" DESC LIMIT :days)
        SELECT l.material_id, v."on", -sum(v.quantity) FROM there v JOIN lot l ON l.id = v.lot_id
        WHERE v."on" IN (SELECT "on" FROM last) GROUP BY l.material_id, v."on" ORDER BY v."on" DESC, l.material_id
        """,
        {"place": place_id, "before": before.isoformat(), "days": days},
    )
    return [SoldThere(row[0], day(row[1]), row[2]) for row in found]
