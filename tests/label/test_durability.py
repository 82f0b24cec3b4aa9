"""What keeps up to thirty months has a date, what keeps longer a period after opening."""

from datetime import date
from functools import partial

import pytest

from ledger.domain.label import durability as domain
from ledger.domain.label.durability import Durability
from ledger.errors import BadInput, Refused

durability = partial(domain.durability, dated_months=30)
MADE = date(2026, 11, 25)


def test_up_to_thirty_months_there_is_a_date() -> None:
    assert durability(MADE, 24) == Durability(date(2028, 11, 25), None)
    assert durability(MADE, 24).month_and_year == "October 2028"  # the end of November 2028 lies five days beyond
    assert durability(MADE, 30).best_before == date(2029, 5, 25)  # two years and six months


def test_a_day_the_month_lacks_becomes_its_last() -> None:
    assert durability(date(2026, 8, 31), 18).best_before == date(2028, 2, 29)  # 2028 is a leap year
    assert durability(date(2026, 8, 31), 6).best_before == date(2027, 2, 28)


def test_above_thirty_months_there_is_a_period_after_opening() -> None:
    assert durability(MADE, 31, after_opening_months=12) == Durability(None, 12)
    assert durability(MADE, 31, after_opening_months=12).month_and_year is None


def test_whether_opening_matters_is_decided_not_assumed() -> None:
    """Art 19(1)(c): above 30 months no date, and the period after opening unless opening does not matter."""
    for undecided in (None, True):
        with pytest.raises(BadInput, match="write after_opening_months = 12 or opening_matters = false under"):
            durability(MADE, 31, opening_matters=undecided)
    assert durability(MADE, 31, opening_matters=False) == Durability(None, None)
    assert durability(MADE, 30, opening_matters=False).month_and_year == "April 2029"


def test_the_two_are_not_mixed() -> None:
    with pytest.raises(BadInput, match=r"Leave it out, with 30 months\.$"):
        durability(MADE, 30, after_opening_months=12)
    with pytest.raises(BadInput, match="37 months after opening, and 36 from the making"):
        durability(MADE, 36, after_opening_months=37)


def test_no_more_is_claimed_than_was_assessed() -> None:
    assert durability(MADE, 24, assessed_months=24).best_before == date(2028, 11, 25)
    with pytest.raises(
        Refused, match=r"^25 months are claimed, and the stability was assessed for 24; claim at most 24\.$"
    ):
        durability(MADE, 25, assessed_months=24)
    with pytest.raises(Refused, match="36 months are claimed, and the stability was assessed for 24"):
        durability(MADE, 36, after_opening_months=12, assessed_months=24)


@pytest.mark.parametrize(("months", "opened"), [(0, None), (-1, None), (36, 0)])
def test_months_begin_at_one(months: int, opened: int | None) -> None:
    with pytest.raises(BadInput, match="from 1 up"):
        durability(MADE, months, after_opening_months=opened)


def test_without_a_rule_on_dates_a_date_stands_however_late() -> None:
    assert domain.durability(MADE, 36, dated_months=None).month_and_year == "October 2029"


@pytest.mark.parametrize(
    ("made", "months", "printed"),
    [
        (date(2026, 5, 1), 24, "April 2028"),  # to 1 May 2028, so the last month that ends by then is April
        (date(2026, 5, 2), 24, "April 2028"),
        (date(2026, 5, 30), 24, "April 2028"),  # to 30 May: a day short of the end of May
        (date(2026, 5, 31), 24, "May 2028"),
        (date(2026, 1, 1), 12, "December 2026"),  # over the year
        (date(2026, 1, 31), 1, "February 2026"),  # to 28 February, its last day
        (date(2027, 2, 28), 12, "January 2028"),  # to 28 February 2028, which has a 29th
        (date(2027, 2, 28), 24, "February 2029"),
        (date(2028, 2, 29), 12, "February 2029"),  # to 28 February 2029, its last day
        (date(2028, 2, 29), 48, "February 2032"),
        (date(2028, 2, 29), 1, "February 2028"),  # to 29 March; never before the month it was made in
        (date(2026, 11, 30), 1, "November 2026"),  # to 30 December, and December has 31
    ],
)
def test_the_month_named_ends_by_the_last_day(made: date, months: int, printed: str) -> None:
    """The month on the bar is included: "before the end of April" is good up to 30 April."""
    assert domain.durability(made, months, dated_months=None).month_and_year == printed
