"""Bars come home from a shop on sale or return: to the returns shelf, where they are looked at first."""

from collections.abc import Mapping
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.lot import held_at, place_of_kind
from ledger.rows.sell.terms import assumed_at
from ledger.storage.book import Book
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.sale.words import whom_kept
from ledger.views.shop.consignment import at_shops, group_meant, shop_meant


def back_from_shop(book: Book, customer: str, bars: Mapping[str, int], *, on: date) -> tuple[str, dict[str, int]]:
    """Move bars that a shop gives back to the returns shelf; returns the shop's name, and how many of each batch.

    They stood in other hands, so they are put back on sale by name. Raises Refused for more than stood there on that
    day, BadInput for a product of which several batches stand there.
    """
    with book.write("consignment back") as tx:
        card, place = shop_meant(tx.rows, customer)
        standing = at_shops(tx.rows, card.id)
        shelf = place_of_kind(tx.rows, "returns")
        unsure = assumed_at(tx.rows, place)
        home: dict[int, int] = {}
        codes: dict[str, int] = {}
        for word, number in bars.items():
            group = group_meant(tx.rows, word, standing, card.name, unsure)
            if len(group.lots) > 1:
                known = " or ".join(one.batch for one in group.lots)
                raise BadInput(f"Of which batch are those of {group.name}? Read the code on them: {known}.")
            (lot,) = group.lots
            if not number:
                raise BadInput(f"How many bars of {group.name} came back? Write a number above zero.")
            if lot.lot_id in home:
                raise BadInput(f"Batch {lot.batch} stands twice; write one number for it.")
            held = min(held_at(tx.rows, [lot.lot_id], place, on=day)[lot.lot_id] for day in (on, None))
            if number > held:
                stood = "stands" if held == 1 else "stand"
                raise Refused(
                    f"{count(held, 'bar')} of batch {lot.batch} {stood} at {card.name} by {show_date(on)}; {number} "
                    "cannot come back from there. Nothing was written."
                )
            home[lot.lot_id] = codes[lot.batch] = number
        tx.transfer(home.items(), source_id=place, target_id=shelf.id, on=on, note=f"back from {card.code}")
        tx.say(f"{count(sum(home.values()), 'bar')} came back from {whom_kept(card)}, unsold.")
    return card.name, codes
