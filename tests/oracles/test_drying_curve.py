"""The drying curve against scipy.optimize.curve_fit (SciPy, BSD), and its dates by the closed formula."""

import random
from math import exp

import pytest
from scipy.optimize import curve_fit
from scipy.stats import t as student_t

from ledger.domain.cure.drying_curve import fit, from_composition, student

DAYS = (7, 14, 21, 28, 42)


def model(t, loss, rate):  # what curve_fit is given: an independent statement of the same curve
    from numpy import exp as each_exp

    return 1 - loss * (1 - each_exp(-rate * t))


def points(loss: float, rate: float, bars: int, noise: float, seed: int) -> list[tuple[float, float]]:
    chance = random.Random(seed)
    return [(day, 1 - loss * (1 - exp(-rate * day)) + chance.gauss(0, noise)) for _ in range(bars) for day in DAYS]


def test_exact_weighings_give_back_the_curve() -> None:
    found = fit(points(0.1, 0.06, 1, 0, 0))
    assert found is not None
    assert (found.loss, found.rate) == (pytest.approx(0.1, abs=1e-7), pytest.approx(0.06, abs=1e-6))


@pytest.mark.parametrize(("loss", "rate", "seed"), [(0.1, 0.06, 1), (0.15, 0.03, 2), (0.08, 0.12, 3), (0.12, 0.05, 4)])
def test_noisy_weighings_of_three_bars_agree_with_scipy(loss: float, rate: float, seed: int) -> None:
    seen = points(loss, rate, 3, 0.001, seed)
    found = fit(seen)
    assert found is not None
    wanted, covariance = curve_fit(model, [one[0] for one in seen], [one[1] for one in seen], p0=(loss, rate))
    assert (found.loss, found.rate) == pytest.approx(tuple(wanted), rel=1e-4)
    assert (*found.variances, found.covariance) == pytest.approx(
        (covariance[0][0], covariance[1][1], covariance[0][1]), rel=0.01
    )


def test_steady_when_a_week_takes_half_a_percent() -> None:
    found = fit(points(0.1, 0.06, 1, 0, 0))
    assert found is not None
    days, give = found.steady_after(0.005)
    # e^(-0.42) = 0.657047: e^(-0.06 t) (0.1 x 0.342953 - 0.005 x 0.1) = 0.005 x 0.9, so e^(-0.06 t) = 0.133156
    assert days == pytest.approx(33.60, abs=0.02)
    assert give == pytest.approx(0, abs=0.1)
    left, next_week = found.left(days), found.left(days + 7)
    assert (left - next_week) / left == pytest.approx(0.005, rel=1e-6)


def test_the_composition_alone() -> None:
    # 1000 g of fats at SV 190, 5 % superfat, water 2 : 1 (worked mass balance): 9.5 % is lost to 10 % water by day 28,
    # 11.5 % to 8 % in the end; rate = -ln(1 - 9.5 / 11.5) / 28
    found = from_composition(0.115, 0.095, 28)
    assert found is not None
    assert found.left(28) == pytest.approx(0.905)
    assert found.rate == pytest.approx(0.06247, abs=1e-5)
    assert found.half_width(1000) == pytest.approx(0.115 / 5, rel=1e-3)


@pytest.mark.parametrize(
    "seen",
    [
        [],
        [(7, 0.97), (14, 0.95)],  # two days do not show a curve
        [(7, 1.0), (14, 1.0), (21, 1.0)],  # nothing lost
        [(7, 1.01), (14, 1.02), (21, 1.03)],  # gaining
        [(7, 0.9), (14, 0.9), (21, 0.9)],  # all lost before the first look: the rate runs away
        [(7, 0.99), (14, 0.98), (21, 0.97)],  # no end in sight
    ],
)
def test_weighings_that_do_not_say_give_no_curve(seen: list[tuple[float, float]]) -> None:
    assert fit(seen) is None


@pytest.mark.parametrize("free", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 30, 60, 120])
def test_the_range_takes_students_t_of_scipy(free: int) -> None:
    assert student(free) == pytest.approx(student_t.ppf(0.975, free), abs=0.0006)


def test_between_two_rows_of_the_table_the_wider_range_counts() -> None:
    for free in range(1, 200):
        assert student(free) >= student_t.ppf(0.975, free) - 0.0006


@pytest.mark.parametrize(("bars", "days"), [(1, DAYS[:3]), (1, DAYS[:4]), (2, DAYS[:3]), (3, DAYS)])
def test_where_bars_dry_by_this_very_curve_its_range_holds_the_true_weight(bars: int, days: tuple[int, ...]) -> None:
    """A simulation by the curve's own law: it checks the arithmetic of the range and says nothing of real bars."""
    chance, held, fitted = random.Random(7), 0, 0
    for _ in range(600):
        seen = [(day, 1 - 0.1 * (1 - exp(-0.06 * day)) + chance.gauss(0, 0.0005)) for _ in range(bars) for day in days]
        found = fit(seen)
        if found is not None:
            fitted += 1
            held += abs(found.left(600) - 0.9) <= found.half_width(600)
    assert fitted > 550
    assert held / fitted > 0.93
