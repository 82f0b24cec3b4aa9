"""Prices and offers as they were set."""

import json
import sqlite3
from collections.abc import Collection

from ledger.domain.sale.pricing import Outlet, SetPrice
from ledger.rows.opened import day


def prices(rows: sqlite3.Connection) -> list[SetPrice]:
    """Every price and offer that counts, in the order they were set."""
    found = rows.execute(
        'SELECT id, recipe_id, place_id, customer_id, "on", bars, price_minor FROM live_price ORDER BY id'
    )
    return [SetPrice(row[0], row[1], Outlet(row[2], row[3]), day(row[4]), row[5], row[6]) for row in found]


def recipes_of(rows: sqlite3.Connection, lots: Collection[int]) -> dict[int, int]:
    """The recipe, by its row number, of the batch that gave each of some lots; lots of no recipe are left out."""
    found = rows.execute(
        "SELECT l.id, v.recipe_id FROM json_each(?) w CROSS JOIN lot l ON l.id = w.value "
        "JOIN batch b ON b.id = l.batch_id JOIN recipe_version v ON v.id = b.recipe_version_id",
        (json.dumps(sorted({*lots})),),
    )
    return {row[0]: row[1] for row in found}
