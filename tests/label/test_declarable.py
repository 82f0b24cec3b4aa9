"""The highest weight a sample may declare keeps the rules, and a gram more does not."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.label.declarable import highest_to_declare
from ledger.domain.label.handbook_133 import maximum_allowable_variation
from ledger.domain.label.packers import System, tolerable_negative_error
from ledger.errors import BadInput
from ledger.markets import market

AVERAGE, MINIMUM = market("gb").packing
(US,) = market("us-soap").packing


# The mean of 110, 112 and 114 g is 112 g, of which 97 % are 108.64 g.
def test_drying_on_the_shelf_may_bind() -> None:
    found = highest_to_declare([110_000, 112_000, 114_000], 970_000, system=AVERAGE)
    assert found.nominal_mg == 108_000
    assert found.why == (
        "108 g is the highest; at 109 g, the mean of the 3 bars falls from 112 g at packing to 108.64 g "
        "at the end of the stock life (97 % of it left)."
    )


def test_without_loss_the_mean_binds() -> None:
    found = highest_to_declare([110_000, 112_000, 113_500], 1_000_000, system=AVERAGE)
    assert found.why == "111 g is the highest; at 112 g, the mean of the 3 bars is 111.833 g."  # 335.5 / 3


# At 111 g the error is 4.995 g, rounded up to 5.0 g: few below 106 g. At 110 g too: few below 105 g.
def test_one_light_bar_may_bind() -> None:
    found = highest_to_declare([105_000] + [120_000] * 11, 990_000, system=AVERAGE)
    assert found.nominal_mg == 110_000
    assert (
        found.why == "110 g is the highest; at 111 g, 1 of 12 bars lies below 106 g (8.34 %), where at most 2.5 % may."
    )


def test_in_the_minimum_system_the_lightest_bar_binds() -> None:
    found = highest_to_declare([109_200, 114_000], 990_000, system=MINIMUM)  # the mean at the end: 110.484 g
    assert found.nominal_mg == 109_000
    assert found.why == (
        "109 g is the highest; at 110 g, 1 of 2 bars lies below 110 g, where none may (the lightest is 109.2 g)."
    )


# The mean of 109 and 109.9 g is 109.45 g: at 110 g it is short, and so are both bars.
def test_two_rules_that_bind_are_both_named() -> None:
    found = highest_to_declare([109_000, 109_900], 1_000_000, system=MINIMUM)
    assert found.why == (
        "109 g is the highest; at 110 g, the mean of the 2 bars is 109.45 g, and 2 of 2 bars lie below 110 g, "
        "where none may (the lightest is 109 g)."
    )


# The mean of 109 and 111 g is 110 g: at 110 g the mean still holds, and the lightest does not.
def test_a_mean_that_reaches_a_gram_more_exactly_is_no_reason_against_it() -> None:
    assert highest_to_declare([109_000, 111_000], 1_000_000, system=MINIMUM).why == (
        "109 g is the highest; at 110 g, 1 of 2 bars lies below 110 g, where none may (the lightest is 109 g)."
    )


# The tolerable errors of Directive 76/211/EEC begin at 5 g.
def test_the_beginning_of_a_table_is_still_an_answer() -> None:
    assert highest_to_declare([5_000], 1_000_000, system=AVERAGE).nominal_mg == 5_000
    with pytest.raises(BadInput, match="No whole gram from 5 g up"):
        highest_to_declare([4_999], 1_000_000, system=AVERAGE)


# The known rows end at 317 g and 10 kg: one gram more cannot be looked up, and need not be.
def test_the_end_of_a_table_is_the_end_of_the_answer() -> None:
    assert highest_to_declare([317_400], 1_000_000, system=US).nominal_mg == 317_000
    assert highest_to_declare([10_000_000], 1_000_000, system=AVERAGE).nominal_mg == 10_000_000
    with pytest.raises(BadInput, match="known here up to 317 g; the bars reach 318 g"):
        highest_to_declare([318_000], 1_000_000, system=US)


@pytest.mark.parametrize("factor", [0, -1, 1_000_001])
def test_a_bar_neither_vanishes_nor_grows(factor: int) -> None:
    with pytest.raises(BadInput, match="above 0 % and up to 100 %"):
        highest_to_declare([110_000], factor, system=AVERAGE)


def test_no_answer_is_said_with_what_to_do() -> None:
    with pytest.raises(BadInput, match="Label each with its own weight"):
        highest_to_declare([900, 100_000], 1_000_000, system=MINIMUM)
    with pytest.raises(BadInput, match="No bar was weighed"):
        highest_to_declare([], 1_000_000, system=MINIMUM)


def keeps(nominal: int, weights: list[int], factor: int, system: System) -> bool:
    """The rules as the law facts state them, reckoned once more."""
    mean = Fraction(sum(weights), len(weights))
    if mean < nominal or mean * factor < nominal * 1_000_000:
        return False
    if system == MINIMUM:
        return min(weights) >= nominal
    if system == US:
        return min(weights) >= nominal - maximum_allowable_variation(nominal).mg
    error = tolerable_negative_error(nominal)
    light = [weight for weight in weights if weight < nominal - error]
    return len(light) * 1000 <= 25 * len(weights) and min(weights) >= nominal - 2 * error


@given(
    weights=st.lists(st.integers(40_000, 130_000), min_size=1, max_size=60),
    factor=st.integers(800_000, 1_000_000),
    system=st.sampled_from([AVERAGE, MINIMUM, US]),
)
def test_the_answer_keeps_the_rules_and_a_gram_more_does_not(weights: list[int], factor: int, system: System) -> None:
    nominal = highest_to_declare(weights, factor, system=system).nominal_mg
    assert nominal % 1000 == 0
    assert keeps(nominal, weights, factor, system)
    assert not any(keeps(more, weights, factor, system) for more in range(nominal + 1000, 131_000, 1000))
