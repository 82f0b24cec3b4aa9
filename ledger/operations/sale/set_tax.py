"""A rate of tax is set from a day on, or ended; and the number she is registered under."""

from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.operations.house.setup import write_settings
from ledger.rows.opened import Rows
from ledger.rows.sell.tax import tax_rates
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.sale import TaxRate
from ledger.units.dates import show_date
from ledger.units.quantity import WHOLE_PPM, show_share


class RateSet(NamedTuple):
    """A rate (None: from that day on none is booked) of a product or all, at an outlet, for a country or everywhere."""

    rate_ppm: int | None
    on: date
    name: str | None = None  # None: as the one set last is called
    recipe_id: int | None = None
    place_id: int | None = None
    customer_id: int | None = None
    country: str | None = None
    what: tuple[str, ...] = ()  # what it is for, in words


def set_tax(book: Book, rate: RateSet | None, *, by: str, number: str | None = None) -> list[str]:
    """Set a rate, or the number under which she is registered, or both; returns what was set, in words.

    Raises BadInput for a rate of the whole price or more, or a country that is not two letters.
    """
    if rate and rate.rate_ppm is not None and rate.rate_ppm >= WHOLE_PPM:
        raise BadInput(f"A rate of {show_share(rate.rate_ppm)} cannot be meant; write it like 20 %.")
    if rate and rate.country is not None and not _letters(rate.country):
        raise BadInput(f"'{rate.country}' is not a country's two letters; write them like IE or GB.")
    with book.write("tax set") as tx:
        told = []
        if number is not None:
            write_settings(tx, settings(tx.rows)._replace(tax_number=number.strip()))
            told.append(f"Registered for a tax on sales under {number.strip()}")
        if rate:
            row, words = _row(tx.rows, rate)
            tx.add(row)
            told.append(words)
        tx.say(f"{'. '.join(told)}, as {by} set it.")
    return told


def _letters(country: str) -> bool:
    return len(country) == 2 and country.isascii() and country.isalpha()


def _row(rows: Rows, rate: RateSet) -> tuple[TaxRate, str]:
    """The row of a rate, and the same in words."""
    before = tax_rates(rows)
    called = rate.name or (before[-1].name if before else "tax")
    row = TaxRate(
        recipe_id=rate.recipe_id,
        place_id=rate.place_id,
        customer_id=rate.customer_id,
        country=rate.country.upper() if rate.country else None,
        on=rate.on,
        rate_ppm=rate.rate_ppm,
        name=called,
    )
    words = f"no {called} is booked" if rate.rate_ppm is None else f"{called} {show_share(rate.rate_ppm)}"
    return row, f"From {show_date(rate.on)}: {', '.join((words, *rate.what))}"
