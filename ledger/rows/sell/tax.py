"""The rates of tax that were set, and those that hold at an outlet on a day."""

import json
import sqlite3
from collections.abc import Iterable
from datetime import date
from typing import NamedTuple

from ledger.domain.sale.tax import Rate, Where, rate_that_holds
from ledger.rows.opened import day


def tax_rates(rows: sqlite3.Connection) -> tuple[Rate, ...]:
    """Every rate that was set and counts, in the order they were written."""
    found = rows.execute(
        'SELECT id, recipe_id, place_id, customer_id, country, "on", rate_ppm, name FROM live_tax_rate ORDER BY id'
    )
    return tuple(Rate(*row)._replace(on=day(row["on"])) for row in found)


def where_sold(rows: sqlite3.Connection, place_id: int | None, customer_id: int | None, on: date) -> Where:
    """Where something is sold, with the country of the customer, or of the shop whose place it is, on that day."""
    if place_id is not None and customer_id is None:
        found = rows.execute("SELECT customer_id FROM place WHERE id = ?", (place_id,)).fetchone()
        customer_id = found and found[0]
    terms = rows.execute(
        'SELECT country FROM live_customer_terms WHERE customer_id = ? AND "on" <= ? '
        'ORDER BY "on" DESC, id DESC LIMIT 1',
        (customer_id, on.isoformat()),
    ).fetchone()
    return Where(place_id, customer_id, terms and terms[0])


class TaxesHere(NamedTuple):
    """What tax is booked at one outlet on one day."""

    rates: tuple[Rate, ...]
    where: Where
    on: date

    def of(self, recipe_id: int | None) -> Rate | None:
        """The rate for a product, or for what is none; None where no tax is booked."""
        return rate_that_holds(self.rates, recipe_id, self.where, self.on)


def taxes_at(rows: sqlite3.Connection, *, place_id: int | None, customer_id: int | None, on: date) -> TaxesHere:
    """What tax is booked at an outlet on a day: none while no rate was set."""
    rates = tax_rates(rows)
    return TaxesHere(rates, where_sold(rows, place_id, customer_id, on) if rates else Where(), on)


def recipes_of(rows: sqlite3.Connection, lots: Iterable[int]) -> dict[int, int]:
    """The product (its recipe) that the bars of some lots are, by the lot; lots of no recipe are left out."""
    found = rows.execute(
        "SELECT l.id, v.recipe_id FROM json_each(?) w CROSS JOIN lot l ON l.id = w.value "
        "JOIN batch b ON b.id = l.batch_id JOIN recipe_version v ON v.id = b.recipe_version_id",
        (json.dumps(sorted({*lots})),),
    )
    return {row[0]: row[1] for row in found}
