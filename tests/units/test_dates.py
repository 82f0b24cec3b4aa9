"""Days are read as she writes them, and no day that could be another is guessed at."""

from datetime import date

import pytest

from ledger.errors import BadInput
from ledger.units.dates import not_future, parse_best_before, parse_clock, parse_date, show_best_before, show_date

TODAY = date(2026, 11, 25)  # a Wednesday: 1 Jan 2026 is a Thursday, and 328 days later is 46 weeks and 6 days


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("2026-11-05", date(2026, 11, 5)),
        (" 2026-11-5 ", date(2026, 11, 5)),
        ("5 Nov 2026", date(2026, 11, 5)),
        ("5 november 2026", date(2026, 11, 5)),
        ("5. Nov. 2026", date(2026, 11, 5)),
        ("4 Sept 2026", date(2026, 9, 4)),
        ("29 Feb 2028", date(2028, 2, 29)),  # 2028 is a leap year
        ("today", date(2026, 11, 25)),
        ("Yesterday", date(2026, 11, 24)),
        ("wednesday", date(2026, 11, 25)),  # today is one, and not after today
        ("saturday", date(2026, 11, 21)),
        ("Sat", date(2026, 11, 21)),
        ("thursday", date(2026, 11, 19)),
    ],
)
def test_a_day_is_read(text: str, day: date) -> None:
    assert parse_date(text, today=TODAY) == day


def test_a_date_with_slashes_shows_both_its_readings() -> None:
    with pytest.raises(BadInput) as refused:
        parse_date("5/11/2026", today=TODAY)
    assert str(refused.value) == (
        "The date '5/11/2026' can be read two ways; write 2026-11-05 for 5 Nov 2026 or 2026-05-11 for 11 May 2026."
    )


@pytest.mark.parametrize("text", ["25/11/2026", "11/25/2026", "25.11.26"])
def test_a_date_with_one_reading_is_refused_with_that_one(text: str) -> None:
    with pytest.raises(BadInput, match=r"; write 2026-11-25 for 25 Nov 2026\.$"):
        parse_date(text, today=TODAY)


@pytest.mark.parametrize("text", ["2026-02-29", "31 Apr 2026", "2026-13-01", "31/31/2026"])
def test_a_day_that_is_in_no_calendar_is_refused(text: str) -> None:
    with pytest.raises(BadInput, match="There is no such day"):
        parse_date(text, today=TODAY)


@pytest.mark.parametrize("text", ["1989-12-31", "2101-01-01"])
def test_a_year_far_off_is_a_slip(text: str) -> None:
    with pytest.raises(BadInput, match="outside the years 1990 to 2100"):
        parse_date(text, today=TODAY)


@pytest.mark.parametrize("text", ["", "tomorrow", "Nov 2026", "5 Ma 2026", "20261125", "NaN"])
def test_what_is_no_date_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(
        BadInput, match=r"^The day it came cannot be read from .*write it like 2026-11-25 or 25 Nov 2026"
    ):
        parse_date(text, today=TODAY, what="the day it came")


def test_a_day_to_come_is_refused() -> None:
    assert not_future(TODAY, today=TODAY) == TODAY
    with pytest.raises(BadInput, match=r"^The date 26 Nov 2026 has not come yet; today is 25 Nov 2026\.$"):
        not_future(date(2026, 11, 26), today=TODAY)


def test_a_day_is_shown_in_words() -> None:
    assert show_date(date(2026, 11, 5)) == "5 Nov 2026"
    assert show_date(date(2026, 5, 1)) == "1 May 2026"


def test_a_clock_time_has_two_figures_each() -> None:
    assert parse_clock("14:05") == "14:05"
    assert parse_clock(" 9.30 ") == "09:30"
    for text in ("", "24:00", "14:60", "2 pm", "1405"):
        with pytest.raises(BadInput, match="write it like 14:05"):
            parse_clock(text)


@pytest.mark.parametrize(
    ("text", "day", "shown"),
    [
        ("2027-03", date(2027, 3, 31), "end Mar 2027"),
        ("2027-3", date(2027, 3, 31), "end Mar 2027"),
        ("03/2027", date(2027, 3, 31), "end Mar 2027"),
        ("3.2027", date(2027, 3, 31), "end Mar 2027"),
        ("Mar 2027", date(2027, 3, 31), "end Mar 2027"),
        ("march 2027", date(2027, 3, 31), "end Mar 2027"),
        ("end Mar 2027", date(2027, 3, 31), "end Mar 2027"),  # as it is shown
        ("end of Mar. 2027", date(2027, 3, 31), "end Mar 2027"),
        ("2027-02", date(2027, 2, 28), "end Feb 2027"),
        ("Feb 2028", date(2028, 2, 29), "end Feb 2028"),  # a leap year
        ("2028-02-28", date(2028, 2, 28), "28 Feb 2028"),  # the day before
        ("Feb 2100", date(2100, 2, 28), "end Feb 2100"),  # not a leap year
        ("Dec 2027", date(2027, 12, 31), "end Dec 2027"),
        ("2027-03-30", date(2027, 3, 30), "30 Mar 2027"),
        ("1 Mar 2027", date(2027, 3, 1), "1 Mar 2027"),
        ("2027-08-31", date(2027, 8, 31), "end Aug 2027"),
    ],
)
def test_a_best_before_of_a_month_is_its_last_day(text: str, day: date, shown: str) -> None:
    found = parse_best_before(text, today=TODAY)
    assert (found, show_best_before(found)) == (day, shown)


@pytest.mark.parametrize(
    "text", ["2027-13", "00/2027", "2027-00", "Mai 2027", "03/27", "1989-12", "2101-01", "2027", "Mar"]
)
def test_what_is_no_month_with_its_year_is_refused(text: str) -> None:
    with pytest.raises(BadInput):
        parse_best_before(text, today=TODAY)
