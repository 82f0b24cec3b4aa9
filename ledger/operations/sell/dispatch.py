"""Bars go to a shop or a person."""

from collections.abc import Mapping
from datetime import date

from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sale.booked import Outlets, SoldBars, book_sale
from ledger.operations.sell.consigned import check_order, consign, place_on_sale_or_return
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
    order: int | None = None,
) -> str:
    """Send released bars to a customer; returns the customer's name. Raises Refused for bars that may not leave.

    To a shop on sale or return they go and stay hers: no sale is booked before its count.
    """
    with book.write("dispatch") as tx:
        card = customer_by_code(tx.rows, customer)
        workshop = place_of_kind(tx.rows, "workshop")
        lots = [(may_go(tx, code, number, on, first, card), number) for code, number in bars.items()]
        promised = {} if order is None else check_order(tx, order, card.id, lots)
        name = f" on order {order}" if order else ""
        if place := place_on_sale_or_return(tx, card.id, on):
            consign(tx, lots, place=place, workshop=workshop, on=on, price_minor=price_minor, note=note, order=order)
            tx.say(f"Took {sum(bars.values())} bars to {card.code} on sale or return{name}.")
            return card.name
        sent = [Moved(lot.id, -number, customer_id=card.id, note=note) for lot, number in lots]
        moved = tx.move(sent, "dispatched", place_id=workshop.id, on=on)
        lines = [
            SoldBars(lot.id, number, movement, None if each is None else each * number)
            for (lot, number), movement in zip(lots, moved, strict=True)
            for each in (promised.get(lot.id) if price_minor is None else price_minor,)
        ]
        book_sale(tx, Outlets(customer_id=card.id), lines, on=on, order_id=order)
        tx.say(f"Dispatched {sum(bars.values())} bars to {card.code}{name}.")
    return card.name
