"""The list of what went to a stall was ticked: the batches of its bars are as booked."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.sell.evening import COUNTED
from ledger.errors import Refused
from ledger.operations.sell.assuming import write_ticked
from ledger.rows.sell.assumed import OpenAt, open_at
from ledger.storage.book import Book
from ledger.units.dates import show_date
from ledger.views.stock.stall import stall_by_name

_GONE = ("sold", "wasted")


class Ticked(NamedTuple):
    """What was ticked, and what stays assumed."""

    stall: str
    on: date  # the day the bars went out
    stay: int  # bars sold or lost there that were counted by product: the list does not say which they were


def stall_ticked(book: Book, stall: str, *, went_on: date | None, on: date, by: str, home: bool = False) -> Ticked:
    """Tick what went to a stall on a day, or the last time whose batches were assumed.

    What was sold that evening is ticked with it, unless bars of several batches were counted by product; these
    too where the bars at `home` were looked at and are as booked, since then the others went. Raises Refused where
    nothing is assumed of what went there.
    """
    with book.write("stall ticked") as tx:
        place = stall_by_name(tx.rows, stall)
        found = open_at(tx.rows, place.id)
        days = {one.on for one in found if _out(one) or (home and one.way in _GONE)}
        if went_on is not None:
            days &= {went_on}
        if not days:
            when = f" on {show_date(went_on)}" if went_on else ""
            raise Refused(f"No batch is assumed of what went to {place.name}{when}; there is nothing to tick.")
        day = max(days)
        went = [one for one in found if one.on == day and _out(one)]
        after = _until_next(found, day)
        settled = [one for one in after if home or COUNTED not in (one.note or "")]
        write_ticked(tx, [one.movement for one in (*went, *settled)], on=on, by=by)
        stay = sum(abs(one.quantity) for one in after if one not in settled)
        tx.say(f"The list of what went to {place.name} on {show_date(day)} was ticked, as {by} says.")
    return Ticked(place.name, day, stay)


def _until_next(found: Sequence[OpenAt], day: date) -> list[OpenAt]:
    """What was sold or lost of it, before bars went out assumed again."""
    later = [one.on for one in found if one.on > day and _out(one)]
    return [one for one in found if one.way in _GONE and one.on >= day and not (later and one.on >= min(later))]


def _out(one: OpenAt) -> bool:
    """Whether bars came to the stall by it."""
    return one.way == "moved" and one.quantity > 0
