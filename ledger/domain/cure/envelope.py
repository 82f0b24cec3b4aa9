"""Between which weights bars dry: every curve of every drying law that their weighings allow, and none left out.

No average of the laws and no single best one: from a few weighings the best one errs to the heavy side. Five or eight
weekly weighings allow wide ranges, and so they are told.
"""

from collections.abc import Iterator, Sequence
from math import inf, sqrt
from typing import NamedTuple

from ledger.domain.cure.drying_laws import Shape, shapes

FEWEST_WEIGHINGS, FEWEST_DAYS = 4, 21  # before them nothing is forecast
APART = 4.0  # of chi-squared, from the best curve to the worst that is kept
_BAR_MG = 300.0  # what one bar strays by besides its scale: an assumption, no source
_LEAST_ERROR = 0.0025  # of the weight, whatever the scale: bars differ, and no law is exact
_LONGEST = 3650  # days; whatever is not steady by then


class Point(NamedTuple):
    """What a bar weighed on average after so many days from the first weighing, in mg, and how far that may be off."""

    days: int
    mg: float
    error: float


class Kept(NamedTuple):
    """A shape with the least and the most of an amount that the weighings allow: mean - amount (gone - middle)."""

    shape: Shape
    middle: float  # its share gone, on average over the weighings
    least: float
    most: float
    give: float  # by which the mean itself may be off


class _Fitted(NamedTuple):
    """The straight-line fit of the weights on what a shape says is gone."""

    shape: Shape
    middle: float
    free: float  # the amount that fits best, whatever the bounds
    error: float
    squares: float  # chi-squared there
    most: float  # the amount that leaves no water

    @property
    def amount(self) -> float:
        """The best amount that can be: none is gained, and no more is lost than there is water."""
        return min(max(self.free, 0.0), self.most)

    @property
    def bounded(self) -> float:
        """Chi-squared at that amount."""
        return self.squares + ((self.amount - self.free) / self.error) ** 2


class Envelope(NamedTuple):
    """All curves that are kept, the best one, and the weight below which no bar can dry, in mg."""

    mean: float
    dry: float
    best: Kept
    curves: tuple[Kept, ...]

    def between(self, days: float) -> tuple[float, float]:
        """The least and the most a bar may weigh so many days after the first weighing, in mg."""
        low, high = inf, -inf
        for one in self.curves:
            by = one.shape.gone(days) - one.middle
            ends = (one.least * by, one.most * by)
            low, high = min(low, self.mean - max(ends) - one.give), max(high, self.mean - min(ends) + one.give)
        return max(low, self.dry), max(high, self.dry)

    def likeliest(self, days: float) -> float:
        """What the curve that fits best says: a line to draw, never a figure to go by."""
        return self._at(self.best.shape, self.best.middle, self.best.least, days)

    def steady(self, weekly: float) -> tuple[int, int]:
        """After how many days a week takes less than this share of the weight: at the earliest, and at the latest."""
        found = [self._steady(one, amount, weekly) for one in self.curves for amount in {one.least, one.most}]
        return min(found), max(found)

    def _steady(self, one: Kept, amount: float, weekly: float) -> int:
        def steady(days: int) -> bool:
            now, later = (self._at(one.shape, one.middle, amount, each) for each in (days, days + 7))
            return now - later < weekly * now

        low, high = 0, _LONGEST
        while low < high:
            half = (low + high) // 2
            low, high = (low, half) if steady(half) else (half + 1, high)
        return low

    def _at(self, shape: Shape, middle: float, amount: float, days: float) -> float:
        return max(self.mean - amount * (shape.gone(days) - middle), self.dry)


def error_of(weighed_mg: float, *, step_mg: int, bars: int, together: bool = False) -> float:
    """How far the average of so many bars may be off, in mg, by the step of the scale and what bars stray by.

    Weighed together they share one reading of the scale. A step is off by its twelfth root (uniform), but never is the
    average known better than to a quarter of a percent.
    """
    scale = step_mg**2 / 12 / (bars if together else 1)
    return max(sqrt((scale + _BAR_MG**2) / bars), _LEAST_ERROR * weighed_mg)


def envelope(points: Sequence[Point], *, dry_mg: float) -> Envelope | None:
    """Every curve within four of the best chi-squared, after the errors were widened to what the best one leaves.

    `dry_mg` is the weight with all water gone, which nothing goes below. None under four weighings or 21 days, and for
    bars that weigh less than that on average.
    """
    if len(points) < FEWEST_WEIGHINGS or points[-1].days - points[0].days < FEWEST_DAYS:
        return None
    heavy = [1 / one.error**2 for one in points]
    total = sum(heavy)
    mean = sum(by * one.mg for by, one in zip(heavy, points, strict=True)) / total
    if mean <= dry_mg:
        return None
    fits = list(_fits(points, heavy, mean, dry_mg))
    best = min(fits, key=lambda one: one.bounded)
    wider = max(best.bounded / (len(points) - 3), 1.0)
    limit = best.bounded / wider + APART
    curves = []
    for one in fits:
        rest = limit - one.squares / wider
        if one.bounded / wider <= limit and rest >= 0:
            reach = sqrt(rest * wider) * one.error
            least, most = (min(max(one.free + side * reach, 0.0), one.most) for side in (-1, 1))
            curves.append(Kept(one.shape, one.middle, least, most, sqrt(rest * wider / total)))
    middle = Kept(best.shape, best.middle, best.amount, best.amount, 0.0)
    return Envelope(mean, dry_mg, middle, tuple(curves))


def _fits(points: Sequence[Point], heavy: Sequence[float], mean: float, dry_mg: float) -> Iterator[_Fitted]:
    """Each shape's straight line through the weighings, in closed form."""
    total, apart = sum(heavy), [one.mg - mean for one in points]
    scatter = sum(by * each * each for by, each in zip(heavy, apart, strict=True))
    days = [one.days for one in points]
    for shape in shapes():
        gone = [shape.gone(each) for each in days]
        middle = sum(by * each for by, each in zip(heavy, gone, strict=True)) / total
        spread = sum(by * (each - middle) ** 2 for by, each in zip(heavy, gone, strict=True))
        if spread <= 1e-18 * total:
            continue
        along = sum(by * each * (one - middle) for by, each, one in zip(heavy, apart, gone, strict=True))
        most = (mean - dry_mg) / (1 - middle) if shape.ends and middle < 1 else inf
        yield _Fitted(shape, middle, -along / spread, 1 / sqrt(spread), scatter - along * along / spread, most)
