"""The chart of fatty acids: where its bars start and end."""

import pytest

from ledger.documents.kit.range_chart import axis_ticks, bars
from ledger.domain.lye.fatty_acids import ProfileLine

OLEIC, LAURIC = ProfileLine("C18:1", "oleic", 375_750, 588_000), ProfileLine("C12:0", "lauric", 0, 133_000)


def test_a_bar_runs_from_low_to_high_on_the_axis() -> None:
    # the axis goes to 60 % over 120 points, 2 points a percent: 100 + 75.15 and 100 + 117.6
    oleic, lauric = bars((OLEIC, LAURIC), start=100, end=220)
    assert (oleic.left, oleic.right) == pytest.approx((175.15, 217.6))
    assert (lauric.left, lauric.right) == pytest.approx((100, 126.6))


def test_a_bar_has_its_name_and_its_figures_to_a_tenth() -> None:
    (bar,) = bars((OLEIC,), start=0, end=1)
    assert (bar.name, bar.figures) == ("oleic", "37.6 to 58.8")


@pytest.mark.parametrize(
    ("highest", "ticks"),
    [
        (4_000, (0, 10)),
        (100_000, (0, 10)),
        (133_000, (0, 10, 20)),
        (500_000, (0, 10, 20, 30, 40, 50)),
        (588_000, (0, 20, 40, 60)),
        (630_000, (0, 20, 40, 60, 80)),
        (1_000_000, (0, 20, 40, 60, 80, 100)),
    ],
)
def test_the_axis_starts_at_zero_and_holds_the_highest_figure(highest: int, ticks: tuple[int, ...]) -> None:
    found = axis_ticks((ProfileLine("C18:1", "oleic", 0, highest),))
    assert tuple(tick // 10_000 for tick in found) == ticks
