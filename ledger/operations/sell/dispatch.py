"""Bars go to a shop or a person."""

from collections.abc import Mapping
from datetime import date

from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sale.booked import Outlets, SoldBars, book_sale
from ledger.operations.sell.leaving import may_go
from ledger.rows.lot import place_of_kind
from ledger.rows.people import customer_by_code
from ledger.storage.book import Book
from ledger.storage.verbs import Moved


def dispatch(
    book: Book,
    customer: str,
    bars: Mapping[str, int],
    *,
    on: date,
    price_minor: int | None,
    note: str | None,
    first: FirstSupplied | None = None,
) -> str:
    """Send released bars to a customer; returns the customer's name. Raises Refused for bars that may not leave."""
    with book.write("dispatch") as tx:
        card = customer_by_code(tx.rows, customer)
        workshop = place_of_kind(tx.rows, "workshop")
        lots = [(may_go(tx, code, number, on, first, card), number) for code, number in bars.items()]
        sent = [Moved(lot.id, -number, customer_id=card.id, note=note) for lot, number in lots]
        moved = tx.move(sent, "dispatched", place_id=workshop.id, on=on)
        lines = [
            SoldBars(lot.id, number, movement, None if price_minor is None else price_minor * number)
            for (lot, number), movement in zip(lots, moved, strict=True)
        ]
        book_sale(tx, Outlets(customer_id=card.id), lines, on=on)
        tx.say(f"Dispatched {sum(bars.values())} bars to {card.code}.")
    return card.name
