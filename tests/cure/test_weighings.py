"""What weighings say without a ledger, at the edges: a week, a limit, a scale, and when a forecast begins."""

from datetime import date, timedelta
from fractions import Fraction
from math import exp

import pytest

from ledger.domain.cure.envelope import Point, envelope, error_of
from ledger.domain.cure.weighings import Lost, Weighing, last_week, points, same_bars, too_coarse

DAY = date(2026, 5, 6)


def bar(days: int, grams: float, mark: str = "A", bars: int = 1) -> Weighing:
    return Weighing(DAY + timedelta(days), mark, round(grams * 1000), bars)


@pytest.mark.parametrize(("days", "known"), [(4, False), (5, True), (7, True)])
def test_a_week_is_known_from_weighings_five_days_apart(days: int, known: bool) -> None:
    assert (last_week([bar(0, 100), bar(days, 99)]) is not None) == known


def test_the_last_week_is_told_from_the_latest_weighing_five_days_before_the_last() -> None:
    lost = last_week([bar(0, 100), bar(7, 98), bar(14, 97), bar(16, 96.5)])
    # from day 7 to day 16: 1.5 of 98 g in nine days
    assert lost == Lost(DAY + timedelta(7), DAY + timedelta(16), Fraction(3, 196))
    assert lost.weekly == Fraction(3, 196) * Fraction(7, 9)
    assert last_week([]) is None


@pytest.mark.parametrize(("after", "over"), [(99_501, False), (99_500, False), (99_499, True)])
def test_just_the_limit_is_not_over_it(after: int, over: bool) -> None:
    lost = last_week([bar(0, 100), Weighing(DAY + timedelta(7), "A", after)])
    assert lost is not None
    assert lost.over(5_000) is over


def test_only_the_same_bars_are_compared() -> None:
    # B was left out the second time: A alone counts, 2 of 100 g
    lost = last_week([bar(0, 100, "A"), bar(0, 120, "B"), bar(7, 98, "A")])
    assert lost is not None
    assert lost.share == Fraction(2, 100)
    # the ten weighed together since day 7 were weighed on more days than A
    series = same_bars([bar(0, 100), bar(7, 99.2, "10 together", 10), bar(14, 98, "10 together", 10)])
    assert [one.mark for one in series] == ["10 together", "10 together"]
    # of as many days, what began first
    assert {one.mark for one in same_bars([bar(0, 100), bar(7, 99, "B")])} == {"A"}
    assert same_bars([]) == ()


def test_what_a_bar_weighed_on_average_counts_every_bar_that_was_on_the_scale() -> None:
    found = points(
        [bar(0, 100, "A"), bar(0, 120, "B"), bar(7, 98, "A"), bar(7, 116, "B"), bar(14, 96, "A")], step_mg=100
    )
    # 110 g; then 214 of 220; then A alone, 96 of 100
    assert [one.mg for one in found] == pytest.approx([110_000, 107_000, 105_600])
    assert [one.days for one in found] == [0, 7, 14]


def test_the_error_is_never_under_a_quarter_of_a_percent() -> None:
    # 1 g and one bar: sqrt(1/12 + 0.09) = 0.4163 g; two bars: 0.2944 g; ten together: 0.0917 g, so 0.25 % of 104 g
    assert error_of(104_000, step_mg=1000, bars=1) == pytest.approx(416.3, abs=0.1)
    assert error_of(104_000, step_mg=1000, bars=2) == pytest.approx(294.4, abs=0.1)
    assert error_of(104_000, step_mg=1000, bars=10, together=True) == 260
    assert error_of(300_000, step_mg=1000, bars=1) == 750


@pytest.mark.parametrize(("bars", "step", "wanted"), [(1, 1000, 10), (3, 1000, 10), (4, 1000, None), (1, 260, None),
                                                      (1, 261, 10)])  # fmt: skip
def test_whether_a_scale_sees_half_a_percent_a_week(bars: int, step: int, wanted: int | None) -> None:
    """Half a percent of 104 g is 0.52 g: two steps of 0.26 g. Of four together it is 2.08 g, of three 1.56 g."""
    mark = "A" if bars == 1 else f"{bars} together"
    assert too_coarse([bar(0, 104, mark, bars)], step_mg=step, weekly_ppm=5_000) == wanted


def test_small_bars_take_more_than_ten_at_once() -> None:
    # 0.5 % of 20 g is 0.1 g; two steps of 1 g are twenty bars
    assert too_coarse([bar(0, 20)], step_mg=1000, weekly_ppm=5_000) == 20


def weekly(*grams: float, every: int = 7) -> list[Point]:
    return [Point(every * i, 1000 * one, 260.0) for i, one in enumerate(grams)]


def test_nothing_is_forecast_before_four_weighings_over_three_weeks() -> None:
    four = (104.0, 101.2, 99.5, 98.3)
    assert envelope(weekly(*four[:3], every=11), dry_mg=80_000) is None
    found = weekly(*four)
    assert envelope(found, dry_mg=80_000) is not None
    assert envelope([*found[:3], found[3]._replace(days=20)], dry_mg=80_000) is None
    assert envelope(found, dry_mg=100_750) is None  # their mean is 100.75 g
    assert envelope(found, dry_mg=100_749) is not None


def test_no_bar_is_forecast_to_lose_more_than_its_water_or_to_gain_any() -> None:
    for grams in ((104, 101, 98, 95.5), (104, 104.2, 103.9, 104.1), (104, 104.5, 105, 105.5)):
        found = envelope(weekly(*map(float, grams)), dry_mg=90_000)
        assert found is not None
        ranges = [found.between(day) for day in (0, 10, 28, 60, 120, 365, 730, 3650)]
        assert all(90_000 <= low <= high for low, high in ranges)
        assert [high for _, high in ranges] == sorted((high for _, high in ranges), reverse=True)
        assert all(one.least >= 0 for one in found.curves)
    assert found.likeliest(0) >= found.likeliest(100)


def test_a_range_narrows_with_weighings_and_widens_with_scatter() -> None:
    grams = [104 - 9 * (1 - exp(-7 * week / 20)) for week in range(12)]
    widths = []
    for known in (grams[:5], grams[:8], grams):
        found = envelope(weekly(*known), dry_mg=84_000)
        assert found is not None
        low, high = found.between(120)
        assert low < 1000 * (104 - 9 * (1 - exp(-6))) < high
        widths.append(high - low)
    assert widths == sorted(widths, reverse=True)
    damp = envelope(weekly(*(one + (0.9 if i % 2 else -0.9) for i, one in enumerate(grams))), dry_mg=84_000)
    assert damp is not None
    low, high = damp.between(120)
    assert high - low > 2 * widths[-1]


def test_steady_days_are_those_of_the_curve_where_the_weighings_leave_no_doubt() -> None:
    # 0.1 (1 - e^(-0.06 t)) exactly, ten times as sure as any scale: 33.6 days by the closed formula
    # e^(-0.06 t) (0.1 x 0.342953 - 0.005 x 0.1) = 0.005 x 0.9, so e^(-0.06 t) = 0.133156
    found = envelope(
        [Point(7 * i, 100_000 * (1 - 0.1 * (1 - exp(-0.06 * 7 * i))), 5.0) for i in range(12)], dry_mg=80_000
    )
    assert found is not None
    earliest, latest = found.steady(0.005)
    assert 32 <= earliest <= 34 <= latest <= 36
