"""What is known here of how the United States judge a sample."""

import pytest

from ledger.domain.label.handbook_133 import maximum_allowable_variation, us_system
from ledger.errors import BadInput


# NIST Handbook 133: 113 g read, the other rows from memory, as the law facts of this project list them.
@pytest.mark.parametrize(
    ("nominal", "allowed"),
    [
        (20_000, 2_000), (35_999, 3_599), (36_000, 3_600), (54_000, 3_600), (54_001, 5_400), (81_001, 7_200),
        (113_000, 7_200), (117_001, 9_000), (154_001, 10_800), (208_001, 12_700), (263_001, 14_500), (317_000, 14_500),
    ],
)  # fmt: skip
def test_the_variation_goes_by_rows(nominal: int, allowed: int) -> None:
    assert maximum_allowable_variation(nominal).mg == allowed


def test_every_row_says_how_well_it_is_known() -> None:
    assert maximum_allowable_variation(113_000).status == "read for 113 g, the ends of the row from memory"
    assert maximum_allowable_variation(150_000).status == "memory"


@pytest.mark.parametrize("nominal", [0, 317_001])
def test_beyond_what_is_known_there_is_no_answer(nominal: int) -> None:
    with pytest.raises(BadInput, match="known here up to 317 g"):
        maximum_allowable_variation(nominal)


# 113 g less 7.2 g is 105.8 g.
def test_the_mean_and_the_lightest_are_held_against_the_declared_weight() -> None:
    assert us_system(113_000, [105_800, 120_200]).holds
    assert [one.holds for one in us_system(113_000, [105_799, 120_201]).rules] == [True, False]
    assert [one.holds for one in us_system(113_000, [112_000, 113_000]).rules] == [False, True]
