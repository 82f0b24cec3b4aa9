"""The drying laws from their published equations, their fits against scipy, and how often the envelope holds.

The truths are simulated here by equations written anew: Newton's and Page's thin-layer curves, two terms, a slab that
dries from both faces (Crank 1975, the whole series), the square root of time, and a steady loss that then falls. Two
bars of 90 to 140 g, their rates up to 5 % apart, weighed every week on a scale of 1 g with 0.3 g of scatter.
"""

import random
from collections.abc import Callable
from math import exp, pi, sqrt

import numpy
import pytest
from scipy.optimize import curve_fit, lsq_linear

from ledger.domain.cure.drying_laws import Shape, shapes
from ledger.domain.cure.envelope import Point, envelope, error_of

Law = Callable[[float], float]  # the share gone after so many days


def slab_series(part: float) -> float:
    """1 - 8/pi^2 sum of exp(-(2n+1)^2 pi^2 Dt/4l^2)/(2n+1)^2, over 200 terms."""
    odd = [2 * n + 1 for n in range(200)]
    return 1 - 8 / pi**2 * sum(exp(-n * n * pi**2 * part / 4) / n**2 for n in odd) if part > 0 else 0.0


def exponential(chance: random.Random) -> Law:
    tau = chance.uniform(12, 45)
    return lambda t: 1 - exp(-t / tau)


def page(chance: random.Random) -> Law:
    tau, power = chance.uniform(12, 45), chance.uniform(0.5, 1.05)
    return lambda t: 1 - exp(-((t / tau) ** power))


def two_phases(chance: random.Random) -> Law:
    share, fast = chance.uniform(0.3, 0.7), chance.uniform(4, 15)
    slow = fast * chance.uniform(5, 20)
    return lambda t: 1 - share * exp(-t / fast) - (1 - share) * exp(-t / slow)


def slab(chance: random.Random) -> Law:
    whole = chance.uniform(40, 250)
    return lambda t: slab_series(t / whole)


def square_root(_: random.Random) -> Law:
    return lambda t: sqrt(t / 365)


def steady_at_first(chance: random.Random) -> Law:
    tau, until = chance.uniform(12, 45), chance.uniform(3, 25)
    rate = 1 / (until + tau)  # the same slope before and after
    return lambda t: rate * t if t < until else 1 - rate * tau * exp(-(t - until) / tau)


LAWS = (exponential, page, two_phases, slab, square_root, steady_at_first)


def holds(law: Callable[[random.Random], Law], chance: random.Random, weighings: int) -> bool:
    """Whether the true mean of two bars at day 120 lies within what their weighings let expect."""
    water, left = chance.uniform(0.15, 0.26), chance.uniform(0.04, 0.10)
    to_lose, gone = (water - left) / (1 - left), law(chance)
    heavy = chance.uniform(90, 140)
    bars = [(heavy * chance.uniform(0.97, 1.03), chance.uniform(0.95, 1.05)) for _ in range(2)]

    def weight(t: float) -> list[float]:
        return [first * (1 - min(to_lose * gone(t * rate), water)) for first, rate in bars]

    read = [[round(one + chance.gauss(0, 0.3)) for one in weight(7.0 * week)] for week in range(weighings)]
    means = [1000 * sum(one) / 2 for one in read]
    points = [Point(7 * week, mg, error_of(mg, step_mg=1000, bars=2)) for week, mg in enumerate(means)]
    found = envelope(points, dry_mg=means[0] * (1 - water))
    assert found is not None
    low, high = found.between(120)
    return low <= 1000 * sum(weight(120)) / 2 <= high


@pytest.mark.parametrize("law", LAWS)
def test_true_weights_lie_in_the_envelope_whatever_the_law(law: Callable[[random.Random], Law]) -> None:
    """A slice of the table below, which takes minutes; of four one may lie outside."""
    chance = random.Random(7)
    assert sum(holds(law, chance, 8) for _ in range(4)) >= 3


@pytest.mark.slow
@pytest.mark.parametrize("weighings", [5, 8, 12])
@pytest.mark.parametrize("law", LAWS)
def test_how_often_the_envelope_holds(law: Callable[[random.Random], Law], weighings: int) -> None:
    chance, sets = random.Random(120), 200
    share = sum(holds(law, chance, weighings) for _ in range(sets)) / sets
    print(f"{law.__name__}, {weighings} weighings: {share:.1%} of {sets}")
    assert share > 0.94


@pytest.mark.parametrize("part", [0.001, 0.05, 0.1999, 0.2, 0.3, 1.0, 3.0])
def test_the_slab_is_its_whole_series(part: float) -> None:
    assert Shape("slab", 100.0).gone(100 * part) == pytest.approx(slab_series(part), abs=1e-3)


def test_the_laws_at_a_day_by_hand() -> None:
    assert Shape("page", 20.0).gone(20) == pytest.approx(0.632121, abs=1e-6)  # 1 - 1/e
    assert Shape("page", 16.0, power=0.5).gone(4) == pytest.approx(0.393469, abs=1e-6)  # 1 - e^(-0.5)
    # 1 - 0.4 e^(-1) - 0.6 e^(-0.1) = 1 - 0.147152 - 0.542902
    assert Shape("two-term", 10.0, later=100.0, share=0.4).gone(10) == pytest.approx(0.309946, abs=1e-6)
    assert Shape("square root").gone(365 / 4) == 0.5
    # tau 20, ten steady days: 1/30 a day, so 1/3 by day 10, then 1 - (2/3) e^(-1) at day 30
    first = Shape("steady at first", 20.0, later=10.0)
    assert (first.gone(10), first.gone(30)) == (pytest.approx(1 / 3), pytest.approx(0.754747, abs=1e-6))


def test_every_law_starts_at_nothing_and_takes_more_every_day() -> None:
    for shape in shapes():
        gone = [shape.gone(t) for t in (0, 1, 7, 28, 120, 365)]
        assert gone[0] == 0
        assert gone == sorted(gone)
        assert not shape.ends or gone[-1] <= 1


WEIGHED = (104_000, 101_200, 99_500, 98_300, 97_600, 97_100)  # week by week, mg


def weekly(grams: tuple[int, ...] = WEIGHED, error: float = 260.0) -> list[Point]:
    return [Point(7 * week, mg, error) for week, mg in enumerate(grams)]


def test_the_best_curve_is_no_worse_than_scipys_single_exponential() -> None:
    found = envelope(weekly(), dry_mg=80_000)
    assert found is not None
    days = numpy.arange(0, 42, 7)
    wanted, _ = curve_fit(lambda t, first, lost, tau: first - lost * (1 - numpy.exp(-t / tau)), days, WEIGHED,
                          p0=(104_000, 8_000, 15))  # fmt: skip
    first, lost, tau = wanted
    theirs = sum((mg - first + lost * (1 - exp(-t / tau))) ** 2 for t, mg in zip(days, WEIGHED, strict=True))
    ours = sum((mg - found.likeliest(t)) ** 2 for t, mg in zip(days, WEIGHED, strict=True))
    assert ours <= theirs * 1.02  # the grid of shapes is a few per cent apart
    for t in (*days, 120):
        low, high = found.between(t)
        assert low <= first - lost * (1 - exp(-t / tau)) <= high


def test_the_amount_of_each_kept_shape_agrees_with_scipys_bounded_line() -> None:
    found = envelope(weekly(), dry_mg=80_000)
    assert found is not None
    for kept in found.curves[::40]:
        gone = numpy.array([kept.shape.gone(7 * week) for week in range(6)])
        most = 1.0 if kept.shape.ends else numpy.inf
        # w = w0 - A g with A = w0 - dry at the most: with dry + B = w0 it is dry + B - A g, B >= A >= 0 where it ends
        line = lsq_linear(numpy.column_stack([numpy.ones(6), 1 - gone]), numpy.array(WEIGHED) - 80_000,
                          bounds=([0 if most == 1.0 else -numpy.inf, 0], numpy.inf))  # fmt: skip
        assert kept.least <= line.x[1] * 1.001
        assert line.x[1] <= kept.most * 1.001
