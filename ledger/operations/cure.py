"""Weighings of marked bars on the rack."""

from collections.abc import Mapping
from datetime import date

from ledger.domain.dates import show_date
from ledger.errors import BadInput, Refused
from ledger.operations.readings import ReadingValue, add_readings
from ledger.storage.book import Book
from ledger.views.batch import find_batch


def weigh_bars(book: Book, code: str, weights_mg: Mapping[str, int], *, on: date) -> None:
    """Book what the marked bars of a batch weigh on a day, in one entry.

    Raises Refused before the cut, BadInput for no weight, a weight of nothing, or a day before the cut.
    """
    with book.write("cure weigh") as tx:
        batch = find_batch(tx.rows, code)
        if batch.yielded_on is None or not batch.soap:
            raise Refused(f"Batch {batch.code} is {batch.status}; it has no bars on the rack to weigh.")
        if on < batch.yielded_on:
            raise BadInput(f"Batch {batch.code} was cut on {show_date(batch.yielded_on)}; look at --on.")
        if not weights_mg or not all(weights_mg.values()):
            raise BadInput("Write each marked bar with its weight, such as A=101.2g B=99.8g.")
        found = [ReadingValue("bar weight", mass, "mg", mark=mark) for mark, mass in weights_mg.items()]
        add_readings(tx, batch, found, on)
        tx.say(f"Weighed {', '.join(weights_mg)} of batch {batch.code}.")
