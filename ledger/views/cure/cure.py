"""The cure rack: what is ready, what still has days to go."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Literal, NamedTuple

from ledger.domain.cure.curing import cure
from ledger.domain.recipe.recipe import WEIGH_EVERY_DAYS
from ledger.rows.batch import batches_on_the_rack
from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.units.words import Process
from ledger.views.cure.cure_forecast import BY_WEIGHINGS, Forecast, Weighing, based_on, forecast, weighings_among
from ledger.views.cure.drying import Drying


class OnTheRack(NamedTuple):
    """One batch that was cut and not yet passed for packing."""

    batch_code: str
    product: str
    process: Process
    cut_on: date
    ready_on: date
    usable_from: date | None
    days_left: int  # below zero: ready for so many days
    bars: int
    status: str
    weigh_on: date  # when its marked bars are weighed next
    steady_from: date | None  # by the forecast, the earliest
    steady_to: date | None  # and the latest
    basis: str | None  # of the forecast: weighings or composition
    lags: str | None  # what is slower than it should be, in words


class RackDay(NamedTuple):
    """A day on which something is to be done at the rack."""

    batch_code: str
    kind: Literal["ready", "usable", "weigh"]
    on: date
    words: str


def cure_list(rows: Rows, *, on: date) -> tuple[OnTheRack, ...]:
    """Every batch on the rack on a date, the first ready first."""
    found = []
    rack = batches_on_the_rack(rows, on)
    lots = lots_by_id(rows, {one.yield_lot_id for one in rack if one.yield_lot_id is not None}, on=on)
    drying = Drying(rows, rack)
    for batch in rack:
        assert batch.yield_lot_id is not None
        assert batch.yielded_on is not None
        assert batch.cure_days is not None
        lot = lots[batch.yield_lot_id]
        days = cure(cut_on=batch.yielded_on, days=batch.cure_days, usable_from_days=batch.usable_from_days, today=on)
        known = weighings_among(drying.readings[batch.id], on=on)
        view, recipe = forecast(rows, batch, known, drying), drying.recipe(batch)
        every = recipe.weigh_every_days if recipe else WEIGH_EVERY_DAYS
        last = max([batch.yielded_on, *(one.on for one in known)])
        found.append(
            OnTheRack(
                batch_code=batch.code,
                product=batch.product,
                process=batch.process,
                cut_on=batch.yielded_on,
                ready_on=days.ready_on,
                usable_from=days.usable_from,
                days_left=days.days_left,
                bars=lot.on_hand,
                status=lot.status,
                weigh_on=last + timedelta(days=every),
                steady_from=view.steady_from if view else None,
                steady_to=view.steady_to if view else None,
                basis=view.basis if view else None,
                lags=_lags(view, known, days.ready_on, on),
            )
        )
    return tuple(sorted(found, key=lambda one: (one.ready_on, one.batch_code)))


def _lags(view: Forecast | None, known: tuple[Weighing, ...], ready_on: date, on: date) -> str | None:
    """Bars that go on losing weight after the day they should be ready, or dry slower than their composition says."""
    if view is None or not known:
        return None
    if view.basis == BY_WEIGHINGS:
        late = view.steady_on > max(ready_on, on)
        span = f"a day between {show_date(view.steady_from)} and {show_date(view.steady_to)}"
        return f"by {based_on(view)} still losing weight until {span}, {view.holds}" if late else None
    first, last = known[0], known[-1]
    bar = {one.mark: one.mass_mg for one in known if one.on == first.on}
    kept = [one.mass_mg / bar[one.mark] for one in known if one.on == last.on and one.mark in bar]
    since, now = ((one.on - view.start).days for one in (first, last))
    slowest = (view.curve.left(now) + view.curve.half_width(now)) / view.curve.left(since)
    if kept and sum(kept) / len(kept) > slowest and now > since:
        return "drying slower than its composition lets expect"
    return None


def rack_days(found: Sequence[OnTheRack]) -> tuple[RackDay, ...]:
    """The days that matter to the batches on the rack: ready, usable from, and to be weighed next while they cure."""
    days = []
    for one in found:
        name = f"{one.product} ({one.batch_code})"
        days.append(RackDay(one.batch_code, "ready", one.ready_on, f"{name}: cure ends, {count(one.bars, 'bar')}"))
        if one.usable_from:
            days.append(RackDay(one.batch_code, "usable", one.usable_from, f"{name}: usable, not yet steady in weight"))
        if one.weigh_on <= one.ready_on or one.lags:
            days.append(RackDay(one.batch_code, "weigh", one.weigh_on, f"{name}: weigh the marked bars"))
    return tuple(sorted(days, key=lambda one: (one.on, one.batch_code, one.kind)))
