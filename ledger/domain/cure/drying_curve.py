"""The drying of bars on the rack: a curve fitted to their weighings, and what it forecasts with how wide a range.

How far a range reaches follows from the scatter of the weighings about this very curve. How often it holds for real
bars, which may dry by another law, is not known; so no share is claimed of it anywhere.
"""

from collections.abc import Sequence
from math import exp, inf, log, sqrt
from typing import NamedTuple

_SLOWEST, _FASTEST = 0.002, 2.0  # per day: between a year and half a day to lose most of what a bar loses
_GOLDEN = (sqrt(5) - 1) / 2
# Student's t for 0.975, by degrees of freedom: NIST/SEMATECH e-Handbook, section 1.3.6.7.2 (from memory, unverified;
# the tests hold it against scipy.stats). Between two of them the larger figure counts.
_STUDENT = {
    1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 7: 2.365, 8: 2.306, 9: 2.262, 10: 2.228,
    12: 2.179, 15: 2.131, 20: 2.086, 30: 2.042, 60: 2.000, 120: 1.980,
}  # fmt: skip


class Curve(NamedTuple):
    """What is left of the first weight after t days: 1 - loss (1 - exp(-rate t)), with the covariance of both."""

    loss: float  # share of the first weight lost in the end
    rate: float  # per day
    variances: tuple[float, float]  # of loss and rate
    covariance: float
    errors: float  # how many standard errors to either side the range reaches

    def left(self, days: float) -> float:
        """The share of the first weight left after so many days."""
        return 1 - self.loss * (1 - exp(-self.rate * days))

    def half_width(self, days: float) -> float:
        """How far to either side it may lie (delta method), if bars dry by this curve; roughly for a composition."""
        fade = exp(-self.rate * days)
        return self.errors * sqrt(max(self._variance(-(1 - fade), -self.loss * days * fade), 0.0))

    def steady_after(self, weekly: float) -> tuple[float, float]:
        """Days until a week takes less than this share of the weight then, and how far that may lie to either side.

        From loss e^(-kt) (1 - e^(-7k)) = weekly (1 - loss + loss e^(-kt)), solved for t; its error by the delta method.
        """
        days = _steady(self.loss, self.rate, weekly)
        if not days:
            return 0.0, 0.0
        step_loss, step_rate = self.loss * 1e-5, self.rate * 1e-5
        by_loss = (_steady(self.loss + step_loss, self.rate, weekly) - days) / step_loss
        by_rate = (_steady(self.loss, self.rate + step_rate, weekly) - days) / step_rate
        return days, self.errors * sqrt(max(self._variance(by_loss, by_rate), 0.0))

    def _variance(self, by_loss: float, by_rate: float) -> float:
        return by_loss**2 * self.variances[0] + by_rate**2 * self.variances[1] + 2 * by_loss * by_rate * self.covariance


def _steady(loss: float, rate: float, weekly: float) -> float:
    over = loss * (1 - exp(-7 * rate) - weekly)
    under = weekly * (1 - loss)
    return log(over / under) / rate if over > under > 0 else 0.0


def fit(points: Sequence[tuple[float, float]]) -> Curve | None:
    """The least-squares curve through (days, share of the first weight left), the first weighing itself left out.

    For a given rate the loss is linear, so one search over the rate finds both; the covariance is that of the residuals
    and the Jacobian. None where the weighings do not say: fewer than three days, no loss, or a rate that runs away.
    """
    if len({days for days, _ in points}) < 3:
        return None
    rates = [_SLOWEST * (_FASTEST / _SLOWEST) ** (step / 60) for step in range(61)]
    best = min(range(61), key=lambda at: _squares(points, rates[at]))
    if best in (0, 60):
        return None
    low, high = log(rates[best - 1]), log(rates[best + 1])
    for _ in range(90):
        near, far = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
        if _squares(points, exp(near)) < _squares(points, exp(far)):
            high = far
        else:
            low = near
    rate = exp((low + high) / 2)
    loss = _loss(points, rate)
    if not 0 < loss < 1:
        return None
    return _with_covariance(points, loss, rate)


def _loss(points: Sequence[tuple[float, float]], rate: float) -> float:
    shares = [(1 - exp(-rate * days), 1 - left) for days, left in points]
    return sum(gone * lost for gone, lost in shares) / sum(gone * gone for gone, _ in shares)


def _squares(points: Sequence[tuple[float, float]], rate: float) -> float:
    loss = _loss(points, rate)
    return sum((left - 1 + loss * (1 - exp(-rate * days))) ** 2 for days, left in points)


def _with_covariance(points: Sequence[tuple[float, float]], loss: float, rate: float) -> Curve | None:
    free = len(points) - 2
    noise = _squares(points, rate) / free if free > 0 else inf
    rows = [(-(1 - exp(-rate * days)), -loss * days * exp(-rate * days)) for days, _ in points]
    a, b, c = (sum(one[i] * one[j] for one in rows) for i, j in ((0, 0), (0, 1), (1, 1)))
    det = a * c - b * b
    if det <= 0 or noise == inf:
        return None
    return Curve(loss, rate, (noise * c / det, noise * a / det), -noise * b / det, student(free))


def student(free: int) -> float:
    """Standard errors to either side, by Student's t for 0.975, that so few degrees of freedom ask for."""
    return _STUDENT[max(one for one in _STUDENT if one <= free)]


def from_composition(loss: float, at_the_end: float, days: int) -> Curve | None:
    """The curve before there are weighings: the loss in the end, and how much of it is lost by the end of the cure.

    Its uncertainty is a rough one, a fifth of the loss and a third of the rate to either side: common practice, no
    source. None where the composition leaves nothing to dry.
    """
    if not 0 < loss < 1 or at_the_end <= 0 or days <= 0:
        return None
    rate = -log(1 - min(at_the_end / loss, 0.95)) / days
    return Curve(loss, rate, ((loss / 5) ** 2, (rate / 3) ** 2), 0.0, 1.0)
