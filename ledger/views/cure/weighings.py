"""What the bars of a batch weighed last, and how much of that weight is known to stay on the shelf."""

from datetime import date
from fractions import Fraction
from typing import NamedTuple

from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.reading import current_readings
from ledger.views.cure.cure_forecast import BY_WEIGHINGS, based_on, forecast, weighings
from ledger.views.cure.drying import Drying


class Weighings(NamedTuple):
    """The bars weighed on one day, in mg; and how much of that weight is known to stay, with its ground."""

    on: date
    weights_mg: tuple[int, ...]
    left: Fraction | None  # the share that stays at the least; None where that is not known
    when: str  # what it stands for, in words, or why it is not known


def last_weighings(rows: Rows, batch: BatchRow) -> Weighings | None:
    """The readings 'bar weight' that count, of the latest day that has some; None before there is one."""
    every = [one for one in current_readings(rows, batch.id) if one.what == "bar weight"]
    if not every:
        return None
    latest = max(one.on for one in every)
    weights = tuple(one.value for one in every if one.on == latest and one.value is not None)
    left, when = _left(rows, batch, Fraction(sum(weights), len(weights)))
    return Weighings(latest, weights, left, when)


def _left(rows: Rows, batch: BatchRow, mean_mg: Fraction) -> tuple[Fraction | None, str]:
    """The least the mean may come to over the mean now: the forecast's low end, or the bar with all its water gone.

    Whichever of the two is less; nothing where neither is known, or both lie above what the bars weigh now.
    """
    found, drying = [], Drying(rows, [batch])
    if dry := drying.dry_bar(batch):
        found.append((dry, "with all its water gone"))
    view = forecast(rows, batch, weighings(rows, batch), drying)
    if view and view.basis == BY_WEIGHINGS and (range_ := view.weight_on(view.end_on)):
        low = f"at the low end of its forecast for the end of the stock life, from {based_on(view)}, {view.holds}"
        found.append((Fraction(range_[0]), low))
    if not found:
        return None, "the bars were not weighed at the cut, and their weighings give no forecast yet"
    known = [one for one in found if 0 < one[0] <= mean_mg]
    if not known:
        return None, "they weigh less now than their weight at the cut and what went in let expect of them quite dry"
    least, when = min(known)
    return least / mean_mg, when
