"""What a label says of the weight never exceeds the weight."""

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.label.net_quantity import Net, dual, metric, own_weights, read_net
from ledger.errors import BadInput


@pytest.mark.parametrize(
    ("mg", "said"),
    [(100_000, "100 g"), (99_500, "99.5 g"), (99_999, "99.9 g"), (99_999 - 950, "99 g"), (1_250_000, "1250 g")],
)
def test_grams_are_cut_off_to_a_tenth(mg: int, said: str) -> None:
    assert metric(Net(mg)) == said


# 16 oz are 453.592 g: one milligram less is 15.99 oz, and ounces go no further.
def test_from_one_pound_up_it_is_in_pounds() -> None:
    assert dual(Net(453_591)) == "Net Wt 15.99 oz (453 g)"
    assert dual(Net(453_592)) == "Net Wt 1 lb (453 g)"
    assert dual(Net(680_387)) == "Net Wt 1.49 lb (680 g)"  # 1.5 lb are 680.388 g


# 3 lb are 3 x 453.592 = 1360.776 g, three figures of it in kilograms.
def test_a_kilogram_and_more_has_three_figures() -> None:
    assert dual(Net(1_360_776)) == "Net Wt 3 lb (1.36 kg)"
    assert dual(Net(999_999)) == "Net Wt 2.2 lb (999 g)"  # 2.204 lb
    assert dual(Net(1_000_000)) == "Net Wt 2.2 lb (1 kg)"


# 2 oz are 56.699 g.
def test_below_a_hundred_grams_two_figures_are_allowed() -> None:
    assert dual(Net(56_699)) == "Net Wt 2 oz (56.6 g)"
    assert dual(Net(56_699), figures=2) == "Net Wt 2 oz (56 g)"
    assert dual(Net(113_398), figures=2) == "Net Wt 4 oz (113 g)"  # not below 100 g


def test_bars_with_their_own_weight_say_no_more_than_it() -> None:
    assert own_weights([Net(109_960), Net(112_000)], metric) == ["109.9 g", "112 g"]
    # 109.96 / 28.3495 = 3.8787; 112 / 28.3495 = 3.9507
    assert own_weights([Net(109_960), Net(112_000)], dual) == ["Net Wt 3.87 oz (109 g)", "Net Wt 3.95 oz (112 g)"]
    with pytest.raises(BadInput, match="weigh it again"):
        own_weights([Net(109_960), Net(0)], metric)


# 16 CFR 500.8: 1 oz = 28.3495 g. 3.5 oz are 99.22325 g, 4 oz 113.398 g, 24 oz one and a half pounds of 453.592 g.
@pytest.mark.parametrize(
    ("typed", "us", "grams"),
    [
        ("3.5 oz", "Net Wt 3.5 oz (99.2 g)", "99.2 g"),
        ("3 1/2 oz", "Net Wt 3.5 oz (99.2 g)", "99.2 g"),
        ("3.49 oz", "Net Wt 3.49 oz (98.9 g)", "98.9 g"),
        ("4 oz", "Net Wt 4 oz (113 g)", "113.3 g"),
        ("24 oz", "Net Wt 1.5 lb (680 g)", "680.3 g"),
        ("1 lb 8 oz", "Net Wt 1.5 lb (680 g)", "680.3 g"),
        ("15.99 oz", "Net Wt 15.99 oz (453 g)", "453.3 g"),
        ("16 oz", "Net Wt 1 lb (453 g)", "453.5 g"),
        ("100 g", "Net Wt 3.52 oz (100 g)", "100 g"),
        ("99.2 g", "Net Wt 3.49 oz (99.2 g)", "99.2 g"),
    ],
)
def test_a_weight_stands_in_the_unit_it_was_decided_in(typed: str, us: str, grams: str) -> None:
    assert (dual(read_net(typed)), metric(read_net(typed))) == (us, grams)


@given(hundredths=st.integers(1, 1599))
def test_ounces_decided_are_printed_as_they_were(hundredths: int) -> None:
    typed = f"{hundredths // 100}.{hundredths % 100:02d}"
    said = dual(read_net(f"{typed} oz"))
    assert Fraction(said.split()[2]) == Fraction(hundredths, 100)


FACTOR = {"g": Fraction(1000), "kg": Fraction(1_000_000), "oz": Fraction("28349.5"), "lb": Fraction(453_592)}


@given(mg=st.integers(1_000, 5_000_000), figures=st.sampled_from([2, 3]))
def test_no_figure_on_a_label_exceeds_the_weight(mg: int, figures: int) -> None:
    for said in (metric(Net(mg)), dual(Net(mg), figures=figures)):  # type: ignore[arg-type]
        for number, unit in re.findall(r"([\d.]+) (kg|g|oz|lb)", said):
            assert 0 < Fraction(number) * FACTOR[unit] <= mg
            assert len(number.partition(".")[2]) <= 2
