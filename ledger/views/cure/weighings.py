"""What the bars of a batch weighed last, and how much of that weight is known to stay on the shelf."""

from datetime import date
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.label.declarable import AT_PACKING
from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.reading import current_readings
from ledger.views.cure.cure_forecast import dried
from ledger.views.cure.drying import Drying
from ledger.views.cure.weighed import weighings


class Weighings(NamedTuple):
    """The bars weighed on one day, in mg; and how much of that weight is known to stay, with its ground."""

    on: date
    weights_mg: tuple[int, ...]
    left: Fraction | None  # the share that stays at the least; None where that is not known
    when: str  # what it stands for, in words, or why it is not known
    moment: str  # at packing, or sooner: at the cut, or while they cured


def last_weighings(rows: Rows, batch: BatchRow) -> Weighings | None:
    """The readings 'bar weight' of single bars that count, of the latest day with some; None before there is one."""
    every = [one for one in current_readings(rows, batch.id) if one.what == "bar weight" and one.bars is None]
    if not every:
        return None
    latest = max(one.on for one in every)
    weights = tuple(one.value for one in every if one.on == latest and one.value is not None)
    left, when = _left(rows, batch, Fraction(sum(weights), len(weights)), latest)
    return Weighings(latest, weights, left, when, _moment(batch, latest))


def _moment(batch: BatchRow, on: date) -> str:
    """What the bars were when they were weighed: only usable ones are as they are packed."""
    if on == batch.yielded_on:
        return "at the cut"
    usable = batch.usable_from or batch.ready_on
    return "while curing" if usable is not None and on < usable else AT_PACKING


def _left(rows: Rows, batch: BatchRow, mean_mg: Fraction, on: date) -> tuple[Fraction | None, str]:
    """The least the mean may come to over the mean now: the forecast's low end, or the bar with all its water gone.

    The forecast speaks once it says what bars weigh at the end of their stock life: the least they may weigh then over
    the most they may weigh now. Before that the dry bar does, unless that is heavier than they are now.
    """
    view = dried(rows, batch, weighings(rows, batch))
    if view and view.forecast and not view.forecast.too_early:
        seen = view.forecast
        held = f"at the low end of its forecast for the end of the stock life, from {seen.based_on}, {seen.holds}"
        return min(Fraction(seen.least_at_the_end_mg, seen.weight_on(on)[1]), Fraction(1)), held
    dry = Drying(rows, [batch]).dry_bar(batch)
    if dry is None:
        return None, "the bars were not weighed at the cut, and their weighings do not say it yet"
    if not 0 < dry <= mean_mg:
        return None, "they weigh less now than their weight at the cut and what went in let expect of them quite dry"
    return dry / mean_mg, "with all its water gone"
