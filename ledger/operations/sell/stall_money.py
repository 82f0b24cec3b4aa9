"""The money of a day at a stall is booked: what bars brought, other goods, what was paid, the difference."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.sale.pricing import Outlet
from ledger.domain.sale.tax import tax_within
from ledger.domain.sell.takings import Brought, Takings, brought, difference
from ledger.operations.sale.booked import Charged, Outlets, Paid, SoldBars, SoldElse, add_lines, add_payments, book_sale
from ledger.rows.lot import PlaceRow
from ledger.rows.opened import Rows
from ledger.rows.sell.paid import payments_of
from ledger.rows.sell.sale import lines_of
from ledger.rows.sell.tax import recipes_of, taxes_at
from ledger.storage.transaction import Transaction
from ledger.views.sale.prices import worth_of


class Sold(NamedTuple):
    """Bars of one batch that were sold, with their movement."""

    lot_id: int
    bars: int
    movement_id: int


class Money(NamedTuple):
    """What the money of a day came to, as far as it is told."""

    sale: int
    bars_minor: int | None  # what the bars should have brought by their prices; None: none has one
    unpriced: int  # bars without a price
    other_minor: int
    paid: tuple[Paid, ...]  # so far
    taken_minor: int | None  # None: nothing is told yet
    difference_minor: int  # booked so far
    complete: bool


class _Taxes:
    """The tax within an amount at a stall on a day."""

    def __init__(self, rows: Rows, place: PlaceRow, lots: Sequence[int], on: date) -> None:
        self._here = taxes_at(rows, place_id=place.id, customer_id=None, on=on)
        self._recipes = recipes_of(rows, lots)

    def within(self, amount_minor: int | None, lot_id: int | None) -> tuple[int | None, int | None]:
        """The rate and the tax; neither where no tax is booked or no amount is known."""
        rate = self._here.of(self._recipes.get(lot_id) if lot_id else None)
        if rate is None or rate.rate_ppm is None or amount_minor is None:
            return None, None
        return rate.rate_ppm, tax_within(amount_minor, rate.rate_ppm)


def book_day(
    tx: Transaction,
    place: PlaceRow,
    sold: Sequence[Sold],
    told: Takings,
    *,
    on: date,
    charged: Sequence[Charged] = (),
    complete: bool,
) -> Money | None:
    """Write the sale of a day at a stall; None where nothing was sold and no money came."""
    bars = {one.lot_id: one.bars for one in sold}
    worth = worth_of(tx.rows, bars, on=on, outlet=Outlet(place_id=place.id))
    taken = told.taken_minor
    found = brought(
        bars,
        {lot: (one.gross_minor, one.reduction_minor) for lot, one in worth.items()},
        taken,
        other_minor=told.other_minor,
    )
    taxes = _Taxes(tx.rows, place, list(bars), on)
    lines: list[SoldBars | SoldElse] = [_line(one, found[one.lot_id], taxes) for one in sold]
    lines += _other(told.other_minor, taxes)
    so_far = sum(one.net_minor for one in found.values()) + told.other_minor
    off = difference(taken, so_far) if complete and taken is not None and lines else 0
    if off:
        lines.append(SoldElse("difference", off, told.reason))
    paid = [Paid(*one) for one in told.paid if one[1] or one[0] != "other"]
    if not lines and not any(one.amount_minor for one in paid):
        where = {"place_id": place.id, "customer_id": None, "sale_id": None, "on": on}
        tx.add_rows("fee", [one._asdict() | where for one in charged])
        return None
    sale = book_sale(tx, Outlets(place_id=place.id), lines, on=on, paid=paid, charged=charged)
    priced = sum(one.gross_minor - one.reduction_minor for one in worth.values()) if worth else None
    unpriced = sum(number for lot, number in bars.items() if lot not in worth)
    return Money(sale, priced, unpriced, told.other_minor, tuple(paid), taken, off, complete)


def _line(one: Sold, brought: Brought, taxes: _Taxes) -> SoldBars:
    known = brought.net_minor if brought.gross_minor is not None else None
    ppm, tax = taxes.within(known, one.lot_id)
    return SoldBars(
        one.lot_id, one.bars, one.movement_id, brought.gross_minor, brought.reduction_minor, tax_ppm=ppm, tax_minor=tax
    )


def _other(other_minor: int, taxes: _Taxes) -> list[SoldElse]:
    if not other_minor:
        return []
    ppm, tax = taxes.within(other_minor, None)
    return [SoldElse("other", other_minor, "goods that are not in the ledger", tax_ppm=ppm, tax_minor=tax)]


def book_later(
    tx: Transaction, place: PlaceRow, sale: int, told: Takings, *, on: date, sold_on: date, complete: bool
) -> Money:
    """Write what was told later of the money of a sale at a stall; what was written with it stays as it is.

    Bars without a price bear their share of it on lines of their own, beside those that say how many they were.
    """
    lines = lines_of(tx.rows, [sale])[sale]
    before = sorted(payments_of(tx.rows, [sale])[sale])  # as they were written
    bars: dict[int, int] = {}
    for line in lines:
        if line.kind == "bars" and line.lot_id is not None:
            bars[line.lot_id] = bars.get(line.lot_id, 0) + line.bars
    worth = worth_of(tx.rows, bars, on=sold_on, outlet=Outlet(place_id=place.id))
    taxes = _Taxes(tx.rows, place, list(bars), sold_on)
    taken = sum(one.amount_minor for one in before) + (told.taken_minor or 0)
    new: list[SoldBars | SoldElse] = [*_other(told.other_minor, taxes)]
    standing = sum(line.amount_minor or 0 for line in lines) + told.other_minor
    valued = {line.lot_id for line in lines if line.gross_minor is not None}
    unpriced = {lot: number for lot, number in bars.items() if lot not in worth or lot not in valued}
    if unpriced and (rest := taken - standing) > 0 and all(line.kind != "difference" for line in lines):
        for lot, one in brought(unpriced, {}, rest, other_minor=0).items():
            ppm, tax = taxes.within(one.gross_minor, lot)
            new.append(SoldBars(lot, 0, None, one.gross_minor, tax_ppm=ppm, tax_minor=tax))
        standing += rest
    off = difference(taken, standing) if complete else 0
    if off:
        new.append(SoldElse("difference", off, told.reason))
    add_lines(tx, sale, new)
    add_payments(tx, sale, [Paid(*one) for one in told.paid], on=on)
    priced = sum(one.gross_minor - one.reduction_minor for one in worth.values()) if worth else None
    other = sum(line.amount_minor or 0 for line in lines if line.kind == "other") + told.other_minor
    paid = tuple([Paid(one.way, one.amount_minor, one.float_minor) for one in before] + [Paid(*p) for p in told.paid])
    earlier = sum(line.amount_minor or 0 for line in lines if line.kind == "difference")
    return Money(sale, priced, sum(unpriced.values()), other, paid, taken, off + earlier, complete)
