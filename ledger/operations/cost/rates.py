"""What an hour of work, or a batch beside its materials, costs from a day on."""

from datetime import date
from typing import NamedTuple

from ledger.domain.cost.working import rate_on
from ledger.rows.sell.cost import batches_since, rates
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.house import CostRate
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.units.words import CostRateKind

OF = {"hour": "An hour of work costs {}", "batch": "Each batch bears {} of the house"}


class RateSet(NamedTuple):
    """What held on the day of a rate before it was booked, and how many batches begun since it costs anew."""

    before_minor: int | None
    batches: int


def set_rate(book: Book, kind: CostRateKind, minor: int, *, on: date) -> RateSet:
    """Book a rate, which is nothing or more, from a day on; batches begun before keep theirs."""
    with book.write("rates set") as tx:
        own, known = settings(tx.rows), rates(tx.rows)
        held = rate_on(known, kind, on)
        before = own.labour_minor_per_hour if held is None and kind == "hour" else held
        later = min((one.on for one in known if one.kind == kind and one.on > on), default=None)
        tx.add(CostRate(on=on, kind=kind, minor=minor))
        tx.say(f"{OF[kind].format(show_money(minor, own.currency))} from {show_date(on)} on.")
        return RateSet(before, batches_since(tx.rows, on, later))
