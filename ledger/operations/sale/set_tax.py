"""A rate of tax is set from a day on, or ended; and the number she is registered under."""

from collections.abc import Sequence
from datetime import date

from ledger.errors import BadInput
from ledger.operations.house.setup import write_settings
from ledger.rows.sell.tax import tax_rates
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.sale import TaxRate
from ledger.units.dates import show_date
from ledger.units.quantity import WHOLE_PPM, show_share


def set_tax(
    book: Book,
    rate_ppm: int | None,
    *,
    on: date,
    by: str,
    name: str | None,
    recipe_id: int | None = None,
    place_id: int | None = None,
    customer_id: int | None = None,
    country: str | None = None,
    what: Sequence[str] = (),
) -> str:
    """Set a rate (None: from that day on none is booked); `what` says in words what it is for. Returns it in words.

    Raises BadInput for a rate of the whole price or more, or a country that is not two letters.
    """
    if rate_ppm is not None and rate_ppm >= WHOLE_PPM:
        raise BadInput(f"A rate of {show_share(rate_ppm)} cannot be meant; write it like 20 %.")
    if country is not None and not (len(country) == 2 and country.isascii() and country.isalpha()):
        raise BadInput(f"'{country}' is not a country's two letters; write them like IE or GB.")
    with book.write("tax set") as tx:
        before = tax_rates(tx.rows)
        called = name or (before[-1].name if before else "tax")
        tx.add(
            TaxRate(
                recipe_id=recipe_id,
                place_id=place_id,
                customer_id=customer_id,
                country=country.upper() if country else None,
                on=on,
                rate_ppm=rate_ppm,
                name=called,
            )
        )
        rate = f"no {called} is booked" if rate_ppm is None else f"{called} {show_share(rate_ppm)}"
        told = f"From {show_date(on)}: {rate}{', ' if what else ''}{', '.join(what)}"
        tx.say(f"{told}, as {by} set it.")
    return told


def set_tax_number(book: Book, number: str, *, by: str) -> None:
    """Keep the number under which she is registered for a tax on sales."""
    with book.write("tax set") as tx:
        write_settings(tx, settings(tx.rows)._replace(tax_number=number.strip()))
        tx.say(f"Registered for a tax on sales under {number.strip()}, as {by} set it.")
