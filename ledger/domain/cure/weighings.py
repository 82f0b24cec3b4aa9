"""What weighings of the same bars say by themselves: what the last week took, and what a scale can see of it."""

from collections import defaultdict
from collections.abc import Sequence
from datetime import date
from fractions import Fraction
from math import ceil
from typing import NamedTuple

from ledger.domain.cure.envelope import Point, error_of
from ledger.units.quantity import WHOLE_PPM

_A_WEEK, _FEWEST_DAYS = 7, 5  # a week's weighing may come two days early
_STEPS_TO_SEE = 2  # a loss is seen when it is two steps of the scale
TOGETHER = 10  # bars that are weighed at once where one alone says too little


class Weighing(NamedTuple):
    """One marked bar on one day, in mg; or several weighed together, with what one of them weighs on average."""

    on: date
    mark: str
    mass_mg: int
    bars: int = 1


class Lost(NamedTuple):
    """What bars lost between their last weighing and the one about a week before."""

    since: date
    on: date
    share: Fraction  # of what they weighed then

    @property
    def weekly(self) -> Fraction:
        """What that comes to in seven days."""
        return self.share * _A_WEEK / (self.on - self.since).days

    def over(self, limit_ppm: int) -> bool:
        """Whether a week takes more than a recipe lets steady bars lose; just as much is not more."""
        return self.weekly * WHOLE_PPM > limit_ppm


def same_bars(known: Sequence[Weighing]) -> tuple[Weighing, ...]:
    """The weighings of those bars that were first weighed on one day and then on the most days, in their order.

    Bars marked later have lost some of their weight already, so the two cannot stand in one curve.
    """
    first: dict[str, date] = {}
    days: dict[date, set[date]] = defaultdict(set)
    for one in sorted(known):
        days[first.setdefault(one.mark, one.on)].add(one.on)
    if not days:
        return ()
    start = max(days, key=lambda each: (len(days[each]), -each.toordinal()))
    return tuple(one for one in sorted(known) if first[one.mark] == start)


def _by_day(series: Sequence[Weighing]) -> dict[date, dict[str, Weighing]]:
    found: dict[date, dict[str, Weighing]] = {}
    for one in series:
        found.setdefault(one.on, {})[one.mark] = one
    return found


def share_left(before: dict[str, Weighing], after: dict[str, Weighing]) -> Fraction | None:
    """What is left of the weight of the bars weighed both times; None where none was."""
    both = [(before[mark], one) for mark, one in after.items() if mark in before]
    whole = sum(one.mass_mg * one.bars for one, _ in both)
    return Fraction(sum(one.mass_mg * one.bars for _, one in both), whole) if whole else None


def lost_since(series: Sequence[Weighing], since: date, on: date) -> Fraction | None:
    """The share that the bars weighed on both days lost between them."""
    days = _by_day(series)
    left = share_left(days[since], days[on])
    return None if left is None else 1 - left


def last_week(series: Sequence[Weighing]) -> Lost | None:
    """What was lost up to the last weighing, since the latest one that is at least five days before it."""
    days = sorted({one.on for one in series})
    if not days:
        return None
    earlier = [one for one in days if (days[-1] - one).days >= _FEWEST_DAYS]
    if not earlier:
        return None
    lost = lost_since(series, earlier[-1], days[-1])
    return None if lost is None else Lost(earlier[-1], days[-1], lost)


def points(series: Sequence[Weighing], *, step_mg: int) -> list[Point]:
    """What a bar weighed on average on each day, from what each kept of its own first weight."""
    days = _by_day(series)
    start = min(days)
    whole = sum(one.mass_mg * one.bars for one in days[start].values())
    first = Fraction(whole, sum(one.bars for one in days[start].values()))
    found = []
    for on, each in sorted(days.items()):
        left = share_left(days[start], each)
        assert left is not None  # of a series every bar was weighed on its first day
        mean = float(first * left)
        bars = sum(one.bars for one in each.values())
        together = len(each) == 1 and bars > 1
        found.append(Point((on - start).days, mean, error_of(mean, step_mg=step_mg, bars=bars, together=together)))
    return found


def too_coarse(series: Sequence[Weighing], *, step_mg: int, weekly_ppm: int) -> int | None:
    """How many bars have to be weighed at once for a scale to see what steady bars lose in a week.

    None where what was weighed at once is enough: the loss of a week is two steps of the scale or more.
    """
    last = [one for one in series if one.on == series[-1].on]
    most = max(one.mass_mg * one.bars for one in last)
    if Fraction(most * weekly_ppm, WHOLE_PPM) >= _STEPS_TO_SEE * step_mg:
        return None
    each = Fraction(sum(one.mass_mg * one.bars for one in last), sum(one.bars for one in last))
    return max(TOGETHER, ceil(_STEPS_TO_SEE * step_mg * WHOLE_PPM / (each * weekly_ppm)))
