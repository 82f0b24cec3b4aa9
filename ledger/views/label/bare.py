"""Bars without a label: where those of a product may be sold so, how many are here, and what is said of them."""

from datetime import date
from typing import NamedTuple

from ledger.domain.release.supply import BARE, KEPT, bare_way
from ledger.rows.bars import back_on_sale, bar_counts
from ledger.rows.batch import BatchRow
from ledger.rows.decision import decided
from ledger.rows.label import SoldBare, runs, sold_bare, went_out
from ledger.rows.opened import Rows
from ledger.units.wording import count

_SUPPLIED = ("on hand", "at a stall", "at a shop", "returned", "sold", "dispatched", "given")


class Outlet(NamedTuple):
    """Where bars are sold: a stall, or who buys them."""

    place_id: int | None = None
    customer_id: int | None = None


def settled_at(settled: tuple[SoldBare, ...], outlet: Outlet, on: date) -> SoldBare | None:
    """What holds at an outlet on a day; None where nobody settled anything by then."""
    return next((one for one in reversed(settled) if _outlet(one) == outlet and one.on <= on), None)


def bare_outlets(settled: tuple[SoldBare, ...], on: date) -> tuple[SoldBare, ...]:
    """Where bars are sold without a label on a day."""
    last = (settled_at(settled, outlet, on) for outlet in dict.fromkeys(map(_outlet, settled)))
    return tuple(one for one in last if one and one.bare)


def bars_without(rows: Rows, batch: BatchRow) -> int:
    """How many bars here have no label: more than labels were ever put on, wherever they were supplied.

    Of those that went where bars of the product are sold without one, as many as can are taken for bars without; of
    those that came back and stand here again nobody knows, so they are not.
    """
    lot = batch.yield_lot_id
    if lot is None:
        return 0
    bars = sum(one.count for one in bar_counts(rows, [lot]) if one.where in _SUPPLIED)
    without = max(0, bars - sum(run.used or 0 for run in runs(rows, lot)))
    settled = sold_bare(rows, batch.recipe_code) if without and batch.recipe_code else ()
    if not settled:
        return without
    gone = 0
    for one in went_out(rows, lot):
        at = Outlet(one.place_id, one.customer_id)
        there = settled_at(settled, at, one.on)
        before = any(_outlet(row) == at and row.bare and row.on <= one.on for row in settled)
        if before if one.bars < 0 else there and there.bare:
            gone += one.bars
    gone -= sum(one.bars for one in back_on_sale(rows, [lot]))
    return max(0, without - max(0, gone))


def bare_words(rows: Rows, batch: BatchRow, *, on: date | None) -> tuple[str, ...]:
    """How many bars here have no label and where they may go, where some were released so; and what was settled."""
    settled = sold_bare(rows, batch.recipe_code) if batch.recipe_code else ()
    words = tuple(one.words for one in settled)
    if batch.yield_lot_id is None or not {("bare", KEPT), ("bare", BARE)} & decided(rows, lot_id=batch.yield_lot_id):
        return words
    number = bars_without(rows, batch)
    if not number:
        return words
    outlets = ", ".join(one.outlet for one in bare_outlets(settled, on or date.max))
    may = (
        f"may leave for {outlets} alone"
        if outlets
        else f"may leave once they have one, or once {bare_way(batch.recipe_code)}"
    )
    return (f"{count(number, 'bar')} here without a label {may}.", *words)


def _outlet(one: SoldBare) -> Outlet:
    return Outlet(one.place_id, one.customer_id)
