"""Which rate holds on a day, and which minutes count."""

from datetime import date

import pytest

from ledger.domain.cost.working import Minutes, Rate, Worked, own_cost, rate_on, worked
from ledger.units.words import Process

FIRST, SECOND = date(2026, 3, 10), date(2026, 6, 1)
RATES = [Rate("hour", SECOND, 2000), Rate("hour", FIRST, 1500), Rate("batch", FIRST, 300)]


@pytest.mark.parametrize(
    ("day", "hour"),
    [
        (date(2026, 3, 9), None),
        (date(2026, 3, 10), 1500),
        (date(2026, 5, 31), 1500),
        (date(2026, 6, 1), 2000),
        (date(2026, 6, 2), 2000),
    ],
)
def test_a_rate_holds_from_its_day_to_the_day_before_the_next(day: date, hour: int | None) -> None:
    assert rate_on(RATES, "hour", day) == hour


def test_of_two_from_one_day_on_the_one_booked_last_holds() -> None:
    assert rate_on([*RATES, Rate("hour", FIRST, 1700)], "hour", FIRST) == 1700


@pytest.mark.parametrize(
    ("told", "counts"),
    [
        (Minutes({}, None, None), Worked(0, "none")),
        (Minutes({}, None, 40), Worked(40, "recipe")),
        (Minutes({}, 30, 40), Worked(30, "readings")),
        (
            Minutes({"making": 20, "wrapping": 25}, 30, 40),
            Worked(45, "stages", (("making", 20), ("wrapping", 25)), 30, 40),
        ),
        (Minutes({}, None, 40, portion=True), Worked(0, "whole")),
        (Minutes({"wrapping": 5}, None, 40, portion=True), Worked(5, "stages", (("wrapping", 5),))),
        (Minutes({}, 0, 40), Worked(0, "readings")),
    ],
)
def test_minutes_by_stage_go_before_those_read_and_those_before_the_recipes(told: Minutes, counts: Worked) -> None:
    assert worked(told) == counts


@pytest.mark.parametrize(
    ("day", "process", "begun", "work", "house"),
    [
        (date(2026, 3, 9), "cold", True, 600, None),  # half an hour at the 12.00 that held before any rate
        (date(2026, 3, 10), "cold", True, 750, 300),
        (date(2026, 6, 1), "infusion", True, 1000, 300),
        (date(2026, 6, 1), "rebatch", False, 1000, None),  # nothing was weighed yet
        (date(2026, 6, 1), "combine", True, 1000, None),  # pouring together is no batch of work
        (date(2026, 6, 1), "portion", True, 1000, None),
        (date(2026, 6, 1), "rework", True, 1000, None),
    ],
)
def test_a_batch_costs_what_the_rates_of_its_day_say(
    day: date, process: Process, begun: bool, work: int, house: int | None
) -> None:
    half_an_hour = Worked(30, "readings")
    found = own_cost(half_an_hour, RATES, day=day, process=process, begun=begun, hour_minor=1200)
    assert (found.work_minor, found.house_minor) == (work, house)
    assert found.total_minor == work + (house or 0)


def test_without_any_rate_work_has_no_cost_that_is_known() -> None:
    found = own_cost(Worked(30, "recipe"), [], day=FIRST, process="cold", begun=True, hour_minor=None)
    assert (found.work_minor, found.house_minor, found.total_minor) == (None, None, 0)
