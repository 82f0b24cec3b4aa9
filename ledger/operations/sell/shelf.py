"""Bars on the returns shelf that do not go back on sale: kept there, or thrown away, by name and with a reason."""

from collections.abc import Mapping
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.lot import LotRow, PlaceRow, find_lot, on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.verbs import Moved
from ledger.units.wording import count
from ledger.views.sale.words import BarsMoved, in_full


def decided_by(done: str, by: str, reason: str) -> str:
    """How a decision is kept with the movement of the bars. Raises BadInput without a name or a reason."""
    if not by.strip():
        raise BadInput(f"Who decided that they are {done}? Add --by NAME.")
    if not reason.strip():
        raise BadInput(f'Why are they {done}? Add --reason, such as --reason "seal unbroken".')
    return f"{done}, {by.strip()}: {reason.strip()}"


def on_the_shelf(rows: Rows, shelf: PlaceRow, code: str, number: int, on: date, *, cannot: str) -> LotRow:
    """The lot of so many bars that stand on the shelf on a day and do so now. Raises BadInput, or Refused for more."""
    lot = find_lot(rows, code, on=on)
    if number <= 0:
        raise BadInput(f"How many bars of batch {lot.code}? Write a number above zero.")
    held = min(on_hand_at(rows, lot.id, shelf.id, on=on), on_hand_at(rows, lot.id, shelf.id))
    if number > held:
        stand = "stands" if held == 1 else "stand"
        raise Refused(
            f"{count(held, 'bar')} of batch {lot.code} {stand} on the returns shelf; {number} cannot {cannot}. "
            "Nothing was written."
        )
    return lot


def keep_returned(book: Book, bars: Mapping[str, int], *, on: date, by: str, reason: str) -> str:
    """Leave bars on the returns shelf, and say why; returns them in full.

    It is written as two movements, from the shelf and onto it, so that a trace shows it and every sum stays.
    """
    words = decided_by("kept", by, reason)
    with book.write("shelf keep") as tx:
        shelf, kept = place_of_kind(tx.rows, "returns"), []
        for code, number in bars.items():
            lot = on_the_shelf(tx.rows, shelf, code, number, on, cannot="be kept there")
            tx.transfer([(lot.id, number)], source_id=shelf.id, target_id=shelf.id, on=on, note=words)
            kept.append(BarsMoved(lot.id, number))
        told = in_full(tx.rows, kept, settings(tx.rows).currency)
        tx.say(f"Kept {told} on the returns shelf, as {by.strip()} decided: {reason.strip()}.")
    return told


def throw_away_returned(book: Book, bars: Mapping[str, int], *, on: date, by: str, reason: str) -> str:
    """Throw bars on the returns shelf away; returns them in full."""
    words = decided_by("thrown away", by, reason)
    with book.write("shelf waste") as tx:
        shelf, gone = place_of_kind(tx.rows, "returns"), []
        for code, number in bars.items():
            lot = on_the_shelf(tx.rows, shelf, code, number, on, cannot="be thrown away")
            tx.move([Moved(lot.id, -number, note=words)], "wasted", place_id=shelf.id, on=on)
            gone.append(BarsMoved(lot.id, number))
        told = in_full(tx.rows, gone, settings(tx.rows).currency)
        tx.say(f"Threw away {told} from the returns shelf, as {by.strip()} decided: {reason.strip()}.")
    return told
