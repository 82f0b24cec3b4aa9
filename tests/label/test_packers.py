"""The packers' rules, held against samples small enough to reckon by hand."""

from fractions import Fraction
from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.label.packers import Few, average_system, grams, minimum_system, percent, tolerable_negative_error
from ledger.errors import BadInput
from ledger.markets.eu import FEW_DE

FEW_GB = Few(25_000, "Great Britain", "SI 2006/659", "read")
MINIMUM = partial(minimum_system, source="SI 2006/659 (Great Britain)", status="read")


def rules(nominal_mg: int, weights_mg: list[int], few: Few = FEW_GB) -> dict[str, bool]:
    """Which of the three rules hold."""
    found = average_system(nominal_mg, weights_mg, few=few)
    return {one.rule: one.holds for one in found.rules}


def test_the_table_of_errors_has_two_ends() -> None:
    assert tolerable_negative_error(5_000) == 500  # 9 % of 5 g are 0.45 g, rounded up to 0.5 g
    assert tolerable_negative_error(10_000_000) == 150_000  # 1.5 %
    for outside in (4_999, 10_000_001, 0):
        with pytest.raises(BadInput, match="5 g to 10 kg"):
            tolerable_negative_error(outside)


@given(nominal=st.integers(5_000, 10_000_000))
def test_the_error_is_whole_tenths_of_a_gram_and_never_below_the_percentage(nominal: int) -> None:
    error = tolerable_negative_error(nominal)
    assert error % 100 == 0
    assert error >= nominal * Fraction("0.015")
    assert tolerable_negative_error(min(nominal + 1, 10_000_000)) >= error


# 110 g: the tolerable error is 5.0 g, so few may lie below 105 g and none below 100 g.
def test_a_sample_on_its_limits_keeps_the_rules() -> None:
    weights = [105_000, 115_000]  # the mean is 110 g, and 105 g is not below 105 g
    assert rules(110_000, weights) == {"mean": True, "few": True, "none": True}
    assert average_system(110_000, weights, few=FEW_GB).holds


def test_a_mean_a_hair_below_is_below_and_reads_so() -> None:
    found = average_system(110_000, [109_999, 110_000], few=FEW_GB)
    assert not found.holds
    assert found.words[0] == "The mean of the 2 bars is 109.999 g, below the nominal 110 g."


# One in 40 is 2.5 %, as many as Great Britain allows and more than the 2 % of Germany; one in 39 is 2.57 %.
def test_the_share_of_light_bars_is_that_of_the_country() -> None:
    assert rules(110_000, [104_900] + [112_000] * 39)["few"]
    assert not rules(110_000, [104_900] + [112_000] * 39, few=FEW_DE)["few"]
    assert not rules(110_000, [104_900] + [112_000] * 38)["few"]
    assert rules(110_000, [104_900] + [112_000] * 49, few=FEW_DE)["few"]


def test_no_bar_may_lie_below_twice_the_error() -> None:
    assert rules(110_000, [100_000] + [112_000] * 39)["none"]
    assert not rules(110_000, [99_999] + [112_000] * 39)["none"]


# The mean of 104, 112 and 117 g is 333/3 = 111 g; one of three is 33.33… %, shown rounded up.
def test_every_rule_says_its_figures_and_what_it_was_checked_against() -> None:
    found = average_system(110_000, [104_000, 112_000, 117_000], few=FEW_GB)
    assert found.words == (
        "The mean of the 3 bars is 111 g, not below the nominal 110 g.",
        "1 of 3 bars lies below 105 g (33.34 %), where at most 2.5 % may.",
        "None of 3 bars lies below 100 g, where none may (the lightest is 104 g).",
        "Checked over the 3 bars weighed against the packers' rules of Directive 76/211/EEC for 110 g with a tolerable "
        "error of 5 g; the inspectors' test of a whole batch was not made.",
    )
    assert [one.status for one in found.rules] == ["read", "read", "read"]


def test_in_the_minimum_system_no_bar_lies_below_the_nominal_weight() -> None:
    assert MINIMUM(110_000, [110_000, 113_000]).holds
    found = MINIMUM(110_000, [109_900, 109_800, 113_000])
    assert not found.holds
    assert found.words[0] == "2 of 3 bars lie below 110 g, where none may (the lightest is 109.8 g)."


@pytest.mark.parametrize("weights", [[], [110_000, 0], [-1]])
def test_no_weights_are_no_sample(weights: list[int]) -> None:
    for system in (partial(average_system, few=FEW_GB), MINIMUM):
        with pytest.raises(BadInput):
            system(110_000, weights)


def test_what_misses_a_limit_never_reads_as_the_limit() -> None:
    assert grams(Fraction(329_999, 3)) == "109.999 g"
    assert percent(Fraction(25_000) + Fraction(1, 9)) == "2.51 %"
    assert percent(25_000) == "2.5 %"
