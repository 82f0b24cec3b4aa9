"""Bars are given away."""

from collections.abc import Mapping
from datetime import date

from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sell.leaving import may_go
from ledger.rows.lot import place_of_kind
from ledger.rows.people import customer_list
from ledger.storage.book import Book
from ledger.storage.verbs import Moved
from ledger.units.signs import folded


def gift(book: Book, bars: Mapping[str, int], *, to: str | None, on: date, first: FirstSupplied | None = None) -> str:
    """Give released bars away, to a known customer or to someone named in words; returns to whom."""
    with book.write("gift") as tx:
        card = next((one for one in customer_list(tx.rows) if to and folded(to) in (one.code, folded(one.name))), None)
        workshop = place_of_kind(tx.rows, "workshop")
        for code, number in bars.items():
            lot = may_go(tx, code, number, on, first, card)
            given = Moved(lot.id, -number, customer_id=card.id if card else None, note=None if card else to)
            tx.move([given], "given", place_id=workshop.id, on=on)
        tx.say(f"Gave {sum(bars.values())} bars away.")
    return card.name if card else to or "someone not named"
