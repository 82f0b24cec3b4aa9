"""Bars that may be of a batch though they are booked on another, since their batch was assumed."""

from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.domain.sell.assumed import together
from ledger.rows.lot import LotRow, lots_by_id, where_lots_are
from ledger.rows.opened import Rows
from ledger.rows.sell.assumed import MayBe, may_be_of, taken_for
from ledger.units.dates import show_date
from ledger.units.wording import count

_HERE = ("workshop", "stall", "consignment")


class AssumedBars(NamedTuple):
    """Bars of one batch, as booked, at one place or gone one way on one day."""

    batch_code: str  # as booked
    product: str
    bars: int
    where: str  # sold at Saturday market
    on: date | None  # None: they are here
    may_be: tuple[str, ...]  # the batches asked about that they may be of

    @property
    def what(self) -> str:
        """Which bars they are, in words."""
        day = f" on {show_date(self.on)}" if self.on else ""
        return f"{count(self.bars, 'bar')} of {self.product} {self.where}{day}, booked as batch {self.batch_code}"

    @property
    def why(self) -> str:
        """Why they cannot be excluded."""
        they, them = ("it", "it") if self.bars == 1 else ("they", "them")
        look = "" if self.on else f"; look at the code{'s' * (self.bars > 1)} on {them}"
        return f"the batch was assumed; {they} may be of {', '.join(self.may_be)}{look}"


def assumed_bars(rows: Rows, lots: Collection[int]) -> tuple[AssumedBars, ...]:
    """Every bar that may be of some lots, whose batch nobody looked at, apart from those that are booked on them."""
    pairs = taken_for(rows, lots)
    if not pairs:
        return ()
    groups = together(pairs)
    linked = {lot for asked in lots for lot in groups.get(asked, ())} - {*lots}
    gone: dict[tuple[int, str, date], list[MayBe]] = {}
    for one in may_be_of(rows, lots):
        if one.lot_id not in lots and one.way != "moved":
            gone.setdefault((one.lot_id, _way(one), one.on), []).append(one)
    known = lots_by_id(rows, {*lots, *linked, *(lot for lot, _, _ in gone)})
    found = [
        _bars(known, lot, sum({one.movement: one.bars for one in each}.values()), where, on, {o.may_be for o in each})
        for (lot, where, on), each in gone.items()
    ]
    for lot, places in where_lots_are(rows, linked).items():
        for place, bars in places:
            if place.kind in _HERE:
                where = "in the workshop" if place.kind == "workshop" else f"at {place.name}"
                found.append(_bars(known, lot, bars, where, None, groups[lot] & {*lots}))
    return tuple(found)


def _way(one: MayBe) -> str:
    if one.way == "sold":
        return f"sold at {one.place}"
    words = {
        "wasted": (one.note or "thrown away").partition("; ")[0],
        "dispatched": "dispatched to a customer",
        "given": "given away",
    }
    return words.get(one.way, one.way)


def _bars(
    known: dict[int, LotRow], lot: int, bars: int, where: str, on: date | None, may_be: Collection[int]
) -> AssumedBars:
    codes = tuple(sorted(known[one].code for one in may_be))
    return AssumedBars(known[lot].code, known[lot].material, bars, where, on, codes)
