"""Bars that came back are put on sale again, by name and with a reason."""

from collections.abc import Mapping
from datetime import date

from ledger.domain.release.supply import first_supplied_in_time
from ledger.errors import Refused
from ledger.operations.release.facts import bars_of, supply_of
from ledger.operations.release.first_supply import FirstSupplied, before_of, write_first_supply
from ledger.operations.sell.shelf import decided_by, on_the_shelf
from ledger.rows.batch import find_batch
from ledger.rows.lot import place_of_kind
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.units.dates import show_date
from ledger.views.sale.words import BarsMoved, in_full


def resell(
    book: Book, bars: Mapping[str, int], *, on: date, by: str, reason: str, first: FirstSupplied | None = None
) -> str:
    """Move bars from the returns shelf to the workshop, where bars for sale stand; returns what moved, in full.

    Raises Refused for bars that were not released on that day, that carry labels of a list that has ended and were not
    first supplied while it held, or for more than stood on the shelf on it or stand there now; BadInput for no number,
    no name or no reason.
    """
    words = decided_by("back on sale", by, reason)
    with book.write("resell") as tx:
        shelf, workshop = place_of_kind(tx.rows, "returns"), place_of_kind(tx.rows, "workshop")
        moved = []
        for code, number in bars.items():
            lot = on_the_shelf(tx.rows, shelf, code, number, on, cannot="go back on sale")
            if lot.status != "released":
                raise Refused(
                    f"The bars of batch {lot.code} are {lot.status} on {show_date(on)}; only released bars go back on "
                    "sale. Nothing was written."
                )
            batch = find_batch(tx.rows, lot.code)
            facts, supply = bars_of(tx.rows, batch, on)[0], supply_of(tx.rows, batch, on, coming=number)
            if first_supplied_in_time(facts, supply, on, number, before_of(tx.rows, lot.id, first)) and first:
                write_first_supply(tx, lot.id, first, number, on=on, back=True)
            tx.transfer([(lot.id, number)], source_id=shelf.id, target_id=workshop.id, on=on, note=words)
            moved.append(BarsMoved(lot.id, number))
        told = in_full(tx.rows, moved, settings(tx.rows).currency)
        tx.say(f"Put {told} from the returns shelf back on sale, as {by.strip()} decided: {reason.strip()}.")
    return told
