"""Bars thrown away, rejected or reworked load the good ones or are written off; the oil cost 1000 for a kilogram."""

from datetime import date

import pytest
from bare_ledger import BareLedger

from ledger.units.codes import batch_code
from ledger.views.cost.cost import BatchCost, batch_cost
from ledger.views.cost.worth import Worth, worth

DAY = date(2026, 3, 30)


def soap(*, written_off: bool = False) -> tuple[BareLedger, int, int]:
    """20 bars from a kilogram of the oil."""
    ledger = BareLedger()
    if written_off:
        own = {"business": "Bare", "country": "IE", "currency": "EUR", "units": "metric", "time_zone": "UTC"}
        ledger.add("settings_revision", rejected_bars="written off", **own)
    oil = ledger.buy("A", cost_minor=1000)
    batch, lots = ledger.make("cold", [])
    ledger.move(oil, -1_000_000, "consumed", batch_id=batch)
    return ledger, batch, lots[0]


def cost(ledger: BareLedger, batch: int) -> BatchCost:
    return batch_cost(ledger.rows, ledger.code("batch", batch))


def stands(ledger: BareLedger) -> Worth:
    found = worth(ledger.rows, DAY)
    assert sum(found.goods.values()) == 1000
    assert found.differs_minor == 0
    return found


def rework(ledger: BareLedger, bars: int, many: int) -> int:
    batch = ledger.add("batch", code=batch_code(2026, 900), process="rework", material_id=4, on="2026-03-02")
    ledger.move(bars, -many, "consumed", batch_id=batch)
    ledger.move(ledger._lot("offcuts", batch_id=batch), 1000, "yielded", batch_id=batch)
    return batch


@pytest.mark.parametrize("written_off", [False, True])
def test_a_batch_whose_bars_were_all_rejected_shows_no_cost_for_each_good_bar(written_off: bool) -> None:
    ledger, batch, bars = soap(written_off=written_off)
    ledger.decide(bars, "rejected")
    found = cost(ledger, batch)
    assert (found.good_bars, found.rejected_bars, found.per_bar_minor) == (0, 20, ())
    assert (found.to_bars_minor, found.written_off_minor) == (1000, 1000)
    assert stands(ledger).goods == {"bars rejected": 1000}


@pytest.mark.parametrize(
    ("written_off", "each", "accounts"),
    [
        # 15 sold, 5 rejected: the 15 bear it all, 66.7 each; or each its own, 50
        (False, {66, 67}, {"sold": 1000}),
        (True, {50}, {"bars rejected": 250, "sold": 750}),
    ],
)
def test_bars_rejected_after_others_left(written_off: bool, each: set[int], accounts: dict[str, int]) -> None:
    ledger, batch, bars = soap(written_off=written_off)
    ledger.move(bars, -15, "dispatched")
    ledger.decide(bars, "rejected")
    found = cost(ledger, batch)
    assert (found.good_bars, found.rejected_bars, {*found.per_bar_minor}) == (15, 5, each)
    assert sum(found.per_bar_minor) + found.written_off_minor == 1000
    assert stands(ledger).goods == accounts


@pytest.mark.parametrize(
    ("written_off", "each", "accounts"),
    [
        # 1000 over 19 bars is 52.63; or over 20, and one of them thrown away
        (False, {52, 53}, {"bars here": 1000}),
        (True, {50}, {"bars here": 950, "thrown away": 50}),
    ],
)
def test_a_bar_thrown_away(written_off: bool, each: set[int], accounts: dict[str, int]) -> None:
    ledger, batch, bars = soap(written_off=written_off)
    ledger.move(bars, -1, "wasted")
    found = cost(ledger, batch)
    assert (found.good_bars, found.wasted_bars, {*found.per_bar_minor}) == (19, 1, each)
    assert stands(ledger).goods == accounts


@pytest.mark.parametrize("written_off", [False, True])
def test_where_all_were_thrown_away_they_bear_it(written_off: bool) -> None:
    ledger, batch, bars = soap(written_off=written_off)
    ledger.move(bars, -20, "wasted")
    found = cost(ledger, batch)
    assert (found.per_bar_minor, found.written_off_minor) == ((), 1000)
    assert stands(ledger).goods == {"thrown away": 1000}


@pytest.mark.parametrize(("written_off", "taken"), [(False, 625), (True, 500)])
def test_reworked_bars_take_theirs_along(written_off: bool, taken: int) -> None:
    """4 of 20 thrown away, then 10 reworked: 10 of the 16 that bear it, 62.5 each; or 10 of 20."""
    ledger, batch, bars = soap(written_off=written_off)
    ledger.move(bars, -4, "wasted")
    ledger.decide(bars, "on hold")
    again = rework(ledger, bars, 10)
    assert cost(ledger, again).total_minor == taken
    assert stands(ledger).goods["offcuts"] == taken
    found = cost(ledger, batch)
    assert (found.good_bars, found.reworked_bars) == (6, 10)


def test_all_rejected_of_which_half_were_reworked_bear_their_own() -> None:
    """No bar is good, so those still here load no other: 10 of 20 took 500 along."""
    ledger, batch, bars = soap()
    ledger.decide(bars, "rejected")
    again = rework(ledger, bars, 10)
    assert cost(ledger, again).total_minor == 500
    assert stands(ledger).goods == {"offcuts": 500, "bars rejected": 500}
    found = cost(ledger, batch)
    assert (found.good_bars, found.reworked_bars, {*found.per_bar_minor}) == (0, 10, {50})


def test_more_had_left_than_are_there_to_bear_it() -> None:
    """20 bars, 18 sold, a count finds 10 more and 12 are thrown away: each bears its own, 50 of the 18 sold."""
    ledger, batch, bars = soap()
    ledger.move(bars, -18, "dispatched", on="2026-03-03")
    ledger.move(bars, 10, "counted", on="2026-03-04")
    ledger.move(bars, -12, "wasted", on="2026-03-05")
    assert stands(ledger).goods == {"sold": 900, "thrown away": 100}
    assert cost(ledger, batch).good_bars == 18


def test_a_rejection_counts_from_its_day_on() -> None:
    ledger, _, bars = soap()
    ledger.decide(bars, "rejected", on="2026-03-10")
    before, after = (worth(ledger.rows, DAY.replace(day=day)).goods for day in (9, 10))
    assert (before, after) == ({"bars here": 1000}, {"bars rejected": 1000})
