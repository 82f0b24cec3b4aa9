"""The rates of tax that were set, and those that hold at an outlet on a day."""

import sqlite3
from datetime import date
from typing import NamedTuple

from ledger.domain.sale.tax import Rate, Where, rate_that_holds
from ledger.rows.opened import day
from ledger.rows.sell.price import recipes_of as recipes_of


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
