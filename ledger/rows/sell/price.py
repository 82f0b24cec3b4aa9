"""Prices and offers as they were set."""

import sqlite3

from ledger.domain.sale.pricing import Outlet, SetPrice
from ledger.rows.opened import day


def prices(rows: sqlite3.Connection) -> list[SetPrice]:
    """Every price and offer that counts, in the order they were set."""
    found = rows.execute(
        'SELECT id, recipe_id, place_id, customer_id, "on", bars, price_minor FROM live_price ORDER BY id'
    )
    return [SetPrice(row[0], row[1], Outlet(row[2], row[3]), day(row[4]), row[5], row[6]) for row in found]
