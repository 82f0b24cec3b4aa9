"""Bars go to a stall."""

from collections.abc import Mapping
from datetime import date

from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sell.leaving import may_go
from ledger.rows.lot import place_of_kind
from ledger.storage.book import Book
from ledger.views.stock.stall import stall_by_name


def stall_out(book: Book, stall: str, bars: Mapping[str, int], *, on: date, first: FirstSupplied | None = None) -> str:
    """Take released bars to a stall; returns its name. Raises Refused for bars that may not leave."""
    with book.write("stall out") as tx:
        place = stall_by_name(tx.rows, stall)
        workshop = place_of_kind(tx.rows, "workshop")
        for code, number in bars.items():
            lot = may_go(tx, code, number, on, first, place)
            tx.transfer([(lot.id, number)], source_id=workshop.id, target_id=place.id, on=on)
        tx.say(f"Took {sum(bars.values())} bars to {place.name}.")
    return place.name
