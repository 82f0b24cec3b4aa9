"""Bars that came back are put on sale again, by name and with a reason."""

from collections.abc import Mapping
from datetime import date

from ledger.domain.release.supply import first_supplied_in_time
from ledger.errors import BadInput, Refused
from ledger.operations.release.facts import bars_of, supply_of
from ledger.operations.release.first_supply import FirstSupplied, before_of, write_first_supply
from ledger.rows.batch import find_batch
from ledger.rows.lot import find_lot, on_hand_at, place_of_kind
from ledger.storage.book import Book
from ledger.units.dates import show_date
from ledger.units.wording import count


def resell(
    book: Book, bars: Mapping[str, int], *, on: date, by: str, reason: str, first: FirstSupplied | None = None
) -> None:
    """Move bars from the returns shelf to the workshop, where bars for sale stand.

    Raises Refused for bars that were not released on that day, that carry labels of a list that has ended and were not
    first supplied while it held, or for more than stood on the shelf on it or stand there now; BadInput for no number,
    no name or no reason.
    """
    if not by.strip():
        raise BadInput("Who decided that they can be sold again? Add --by NAME.")
    if not reason.strip():
        raise BadInput('Why can they be sold again? Add --reason, such as --reason "seal unbroken".')
    with book.write("resell") as tx:
        shelf, workshop = place_of_kind(tx.rows, "returns"), place_of_kind(tx.rows, "workshop")
        for code, number in bars.items():
            lot = find_lot(tx.rows, code, on=on)
            if number <= 0:
                raise BadInput(f"How many bars of batch {lot.code}? Write a number above zero.")
            held = min(on_hand_at(tx.rows, lot.id, shelf.id, on=on), on_hand_at(tx.rows, lot.id, shelf.id))
            if number > held:
                stand = "stands" if held == 1 else "stand"
                raise Refused(
                    f"{count(held, 'bar')} of batch {lot.code} {stand} on the returns shelf; {number} cannot go back "
                    "on sale. Nothing was written."
                )
            if lot.status != "released":
                raise Refused(
                    f"The bars of batch {lot.code} are {lot.status} on {show_date(on)}; only released bars go back on "
                    "sale. Nothing was written."
                )
            batch = find_batch(tx.rows, lot.code)
            facts, supply = bars_of(tx.rows, batch, on)[0], supply_of(tx.rows, batch, on, coming=number)
            if first_supplied_in_time(facts, supply, on, number, before_of(tx.rows, lot.id, first)) and first:
                write_first_supply(tx, lot.id, first, number, on=on, back=True)
            note = f"back on sale, {by.strip()}: {reason.strip()}"
            tx.transfer([(lot.id, number)], source_id=shelf.id, target_id=workshop.id, on=on, note=note)
        tx.say(f"Put {sum(bars.values())} bars from the returns shelf back on sale, as {by.strip()} decided.")
