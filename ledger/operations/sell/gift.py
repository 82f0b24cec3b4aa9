"""Bars are given away, used at home, tried out or handed over as samples: none of it is a sale."""

from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sell.leaving import may_go
from ledger.rows.lot import place_of_kind
from ledger.rows.people import customer_list
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.verbs import Moved
from ledger.units.signs import folded
from ledger.views.sale.words import BarsMoved, in_full, whom_kept


class Given(NamedTuple):
    """What was given, in full, and to whom."""

    bars: str
    whom: str


def gift(
    book: Book,
    bars: Mapping[str, int],
    *,
    to: str | None,
    on: date,
    first: FirstSupplied | None = None,
    what_for: str | None = None,
) -> Given:
    """Give released bars away, to a known customer or to someone named in words.

    `what_for` is what they are instead of a gift (own use, tester, sample), in her words, kept on the movement.
    """
    with book.write("gift") as tx:
        card = next((one for one in customer_list(tx.rows) if to and folded(to) in (one.code, folded(one.name))), None)
        workshop, given = place_of_kind(tx.rows, "workshop"), []
        note = what_for if card or not to else f"{to} ({what_for})" if what_for else to
        for code, number in bars.items():
            lot = may_go(tx, code, number, on, first, card)
            gone = Moved(lot.id, -number, customer_id=card.id if card else None, note=note)
            tx.move([gone], "given", place_id=workshop.id, on=on)
            given.append(BarsMoved(lot.id, number))
        told = in_full(tx.rows, given, settings(tx.rows).currency)
        whom = f" to {whom_kept(card)}" if card else f" to {to}" if to else ""
        tx.say(f"Gave {told} away{whom}{f', as {what_for}' if what_for else ''}.")
    return Given(told, card.name if card else to or ("" if what_for else "someone not named"))
