"""What is asked before takings are booked: those that are far from what the bars sold usually bring."""

from collections.abc import Mapping
from datetime import date

from ledger.domain.sale.pricing import Outlet
from ledger.domain.sell.takings import Takings, all_told
from ledger.rows.lot import PlaceRow
from ledger.rows.opened import Rows
from ledger.rows.sell.paid import payments_of
from ledger.rows.sell.sale import lines_of, sales_by_id
from ledger.rows.sell.stall import last_sale_at
from ledger.units.money import share_out
from ledger.views.sale.doubts import Taken, unlikely


def takings_doubt(
    rows: Rows, place: PlaceRow, sold: Mapping[int, int], money: Takings, *, on: date, currency: str
) -> str | None:
    """What to look at twice, where all is told of the bars sold (by lot); else None."""
    if not all_told(money, set()):
        return None
    return _doubt(rows, place, sold, (money.taken_minor or 0) - money.other_minor, on=on, currency=currency)


def later_doubt(rows: Rows, place: PlaceRow, money: Takings, *, on: date | None, currency: str) -> str | None:
    """The same of what is told after the evening, with what was told before."""
    sale = last_sale_at(rows, place.id, on)
    if sale is None:
        return None
    before, lines = payments_of(rows, [sale])[sale], lines_of(rows, [sale])[sale]
    if not all_told(money, {one.way for one in before}):
        return None
    bars = {line.lot_id: line.bars for line in lines if line.kind == "bars" and line.lot_id and line.bars}
    other = sum(line.amount_minor or 0 for line in lines if line.kind == "other") + money.other_minor
    taken = sum(one.amount_minor for one in before) + (money.taken_minor or 0) - other
    return _doubt(rows, place, bars, taken, on=sales_by_id(rows, [sale])[sale].on, currency=currency)


def _doubt(rows: Rows, place: PlaceRow, sold: Mapping[int, int], taken: int, *, on: date, currency: str) -> str | None:
    bars = {lot: number for lot, number in sold.items() if number}
    if not bars or taken <= 0:
        return None
    shares = share_out(taken, list(bars.values()))
    said = [Taken(lot, number, share) for (lot, number), share in zip(bars.items(), shares, strict=True)]
    return unlikely(rows, said, Outlet(place_id=place.id), on, currency)
