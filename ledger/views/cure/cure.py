"""The cure rack: what is ready, what still has days to go."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Literal, NamedTuple

from ledger.domain.cure.curing import cure
from ledger.domain.recipe.recipe import WEEKLY_LOSS_PPM, WEIGH_EVERY_DAYS
from ledger.rows.batch import BatchRow, batches_on_the_rack, cut_of_recipes
from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.reading import readings_of
from ledger.rows.recipe import versions_by_id
from ledger.units.wording import count
from ledger.units.words import Process
from ledger.views.cure.weighed import EARLIER, losing_words, weighings_among
from ledger.views.stock.promised import late_by_batch, promises


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
    lags: str | None  # that it was still losing weight when its cure ended, in words
    late_for: tuple[str, ...] = ()  # promises that its bars come too late for, in words


class RackDay(NamedTuple):
    """A day on which something is to be done at the rack."""

    batch_code: str
    kind: Literal["ready", "usable", "weigh"]
    on: date
    words: str


def cure_list(rows: Rows, *, on: date) -> tuple[OnTheRack, ...]:
    """Every batch on the rack on a date, the first ready first. Nothing is forecast: that is for one batch."""
    rack = batches_on_the_rack(rows, on)
    lots = lots_by_id(rows, {one.yield_lot_id for one in rack if one.yield_lot_id is not None}, on=on)
    recipes = versions_by_id(rows, {one.recipe_version_id for one in rack if one.recipe_version_id is not None})
    cut = cut_of_recipes(rows, {one.recipe_code for one in rack if one.recipe_code})
    readings = readings_of(rows, [one.id for one in rack])
    late = late_by_batch(promises(rows, on)) if rack else {}
    found = []
    for batch in rack:
        assert batch.yield_lot_id is not None
        assert batch.yielded_on is not None
        assert batch.cure_days is not None
        lot, recipe = lots[batch.yield_lot_id], recipes.get(batch.recipe_version_id or 0)
        days = cure(cut_on=batch.yielded_on, days=batch.cure_days, usable_from_days=batch.usable_from_days, today=on)
        known = weighings_among(readings[batch.id], on=on)
        limit = recipe.weekly_loss_ppm if recipe else WEEKLY_LOSS_PPM
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
                weigh_on=_weigh_on(
                    batch,
                    max([batch.yielded_on, *(one.on for one in known)]),
                    every=recipe.weigh_every_days if recipe else WEIGH_EVERY_DAYS,
                    earlier=sum(one < batch.id for one in cut.get(batch.recipe_code or "", ())),
                ),
                lags=losing_words(known, limit) if on >= days.ready_on else None,
                late_for=late.get(batch.code, ()),
            )
        )
    return tuple(sorted(found, key=lambda one: (one.ready_on, one.batch_code)))


def _weigh_on(batch: BatchRow, last: date, *, every: int, earlier: int) -> date:
    """When marked bars are weighed next: week by week for the first three batches of a recipe, then before the pass.

    A recipe that sets days of its own goes by them.
    """
    weekly = last + timedelta(days=every)
    if earlier < EARLIER or every != WEIGH_EVERY_DAYS or batch.ready_on is None or last >= batch.ready_on:
        return weekly
    return batch.ready_on


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
