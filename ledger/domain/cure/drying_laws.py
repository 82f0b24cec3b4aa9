"""The laws by which bars may dry, each as what share of the weight to lose is gone after so many days.

No measured law of finished soap bars was found. For foods two falling-rate periods and Page's curve hold better than a
single exponential; a slab that water has to travel through is slower still. So all are asked, over the constants they
could sensibly have: l is half the thickness of a bar, D the diffusivity of water in it.
"""

from collections.abc import Iterator
from functools import cache
from math import exp, pi, sqrt
from typing import Literal, NamedTuple

SQUARE_ROOT_YEAR = 365.0  # days in which the square-root law loses its whole amount; any other only renames the amount
_BY_ROOT = 0.2  # of D t / l^2: below, the slab's beginning is its square root to a thousandth


class Shape(NamedTuple):
    """One law with its constants, days where they are times."""

    law: Literal["page", "two-term", "slab", "square root", "steady at first"]
    time: float = SQUARE_ROOT_YEAR  # tau of Page, t1 of two terms, l^2 / D of a slab
    power: float = 1.0  # n of Page; 1 is the exponential
    later: float = 0.0  # t2 of two terms; how many days of steady loss there are at first
    share: float = 0.0  # a of two terms: what the first takes

    @property
    def ends(self) -> bool:
        """Whether it comes to a floor; the square root of time does not."""
        return self.law != "square root"

    def gone(self, days: float) -> float:
        """The share gone after so many days, 0 at the start.

        Page (thin-layer table: MR = exp(-k t^n)), two terms (same table), slab drying from both faces and its beginning
        (Crank, The Mathematics of Diffusion, 1975, p. 48, quoted; from memory, unverified for the square root).
        """
        if days <= 0:
            return 0.0
        if self.law == "page":
            return 1 - exp(-((days / self.time) ** self.power))
        if self.law == "two-term":
            return 1 - self.share * exp(-days / self.time) - (1 - self.share) * exp(-days / self.later)
        if self.law == "square root":
            return sqrt(days / self.time)
        if self.law == "steady at first":
            slope = 1 / (self.time + self.later)
            if days <= self.later:
                return slope * days
            return 1 - self.time * slope * exp((self.later - days) / self.time)
        part = days / self.time
        if part < _BY_ROOT:
            return 2 * sqrt(part / pi)
        fade = exp(-pi * pi * part / 4)
        return 1 - 8 / (pi * pi) * (fade + fade**9 / 9 + fade**25 / 25)


@cache
def shapes() -> tuple[Shape, ...]:
    """Every law with every constant asked: about two thousand. The exponential is Page with the power 1."""
    return tuple(_shapes())


def _shapes() -> Iterator[Shape]:
    for time in _steps(3, 3000, 70):
        for power in range(45, 111, 5):
            yield Shape("page", time, power / 100)
    for time in _steps(3, 40, 10):
        for ratio in _steps(2, 30, 11):
            for share in range(1, 10):
                yield Shape("two-term", time, later=time * ratio, share=share / 10)
    for time in _steps(8, 3000, 70):
        yield Shape("slab", time)
    for time in _steps(3, 300, 40):
        for first in _steps(2, 30, 8):
            yield Shape("steady at first", time, later=first)
    yield Shape("square root")


def _steps(low: float, high: float, number: int) -> list[float]:
    return [float(low * (high / low) ** (step / (number - 1))) for step in range(number)]
