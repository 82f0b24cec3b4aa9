"""Bars come back, on the returns shelf."""

from collections.abc import Mapping
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.bars import bars_out
from ledger.rows.lot import find_lot, place_of_kind
from ledger.rows.people import customer_by_code
from ledger.storage.book import Book
from ledger.storage.verbs import Moved
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.stock.stall import stall_by_name


def take_back(
    book: Book,
    bars: Mapping[str, int],
    *,
    customer: str | None,
    stall: str | None,
    on: date,
    reason: str | None,
) -> None:
    """Book bars that came back, on the returns shelf.

    Raises Refused for more bars than that customer has, or than were sold (at that stall, or at all).
    """
    with book.write("return") as tx:
        card = customer_by_code(tx.rows, customer) if customer else None
        place = stall_by_name(tx.rows, stall) if stall else None
        shelf = place_of_kind(tx.rows, "returns")
        for code, number in bars.items():
            lot = find_lot(tx.rows, code)
            if number <= 0:
                raise BadInput(f"How many bars of batch {lot.code} came back? Write a number above zero.")
            whose = (card.id if card else None, place.id if place else None)
            out = min(bars_out(tx.rows, lot.id, *whose, day) for day in (on, None))
            if number > out:
                whom = f"{card.name} has" if card else f"{place.name} sold" if place else "Customers not named have"
                raise Refused(
                    f"{whom} {count(out, 'bar')} of batch {lot.code} by {show_date(on)}; "
                    f"{number} cannot have come back from there."
                )
            origin = reason if card else "; ".join(w for w in (f"sold at {place.name}" if place else "", reason) if w)
            came = Moved(lot.id, number, customer_id=card.id if card else None, note=origin or None)
            tx.move([came], "returned", place_id=shelf.id, on=on)
        tx.say(f"{sum(bars.values())} bars came back from {card.code if card else place.name if place else 'someone'}.")
