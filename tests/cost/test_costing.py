"""What everything that happens to a lot bears of its cost, to the minor unit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.cost.costing import each_bar, labour_cost
from ledger.domain.cost.flows import CostLot, Happened, between, spread
from ledger.units.words import Way

DAYS = [f"2026-03-{day:02d}" for day in range(1, 29)]


def lot(*moves: tuple[Way, int]) -> list[Happened]:
    """What happened to a lot, one thing a day; the first is number 0."""
    return [Happened(number, DAYS[number], quantity, way, None) for number, (way, quantity) in enumerate(moves)]


def test_first_in_first_out_of_the_textbook() -> None:
    # 100 at 10 and 200 at 12, issue 250: 100 x 10 + 150 x 12 = 2,800 out and 600 left.
    first = spread(1000, lot(("received", 100), ("consumed", -100)))
    second = spread(2400, lot(("received", 200), ("consumed", -150)))
    assert first.by_movement[1] + second.by_movement[1] == 2800
    assert first.left + second.left == 600


def test_a_correction_after_more_was_logged_than_there_was_takes_back_what_was_too_much() -> None:
    # A lot of 100 that cost 50: 80 and 40 logged, then the 40 corrected to 20. The first bears 40, the second 20 - 10.
    found = spread(50, lot(("received", 100), ("consumed", -80), ("consumed", -40), ("consumed", 20)))
    assert (found.by_movement, found.left) == ({1: 40, 2: 20, 3: -10}, 0)


def test_an_hour_and_a_half_at_fourteen_costs_twenty_one() -> None:
    assert labour_cost(90, 1400) == 2100


def test_half_a_cent_of_work_is_rounded_up() -> None:
    """A minute is 0.5 cents at 0.30 an hour, and less at 0.29."""
    assert (labour_cost(1, 30), labour_cost(1, 29)) == (1, 0)


def test_what_comes_back_from_a_batch_is_no_stock_that_came() -> None:
    """1000 g for 1000: 600 g went in and 100 g of it came back, 300 g were thrown away; 200 g are left."""
    found = spread(1000, lot(("received", 1000), ("consumed", -600), ("consumed", 100), ("wasted", -300)))
    assert (found.by_movement, found.left) == ({1: 600, 2: -100, 3: 300}, 200)
    assert spread(1000, lot(("consumed", -600))) == ({}, 1000)  # nothing came, so nothing is shared out


def test_bars_that_came_back_are_no_bars_that_were_made() -> None:
    """20 bars for 1000, 5 sold and 5 back, 10 dispatched: half of it; what came back takes back what it had cost."""
    found = spread(1000, lot(("yielded", 20), ("sold", -5), ("returned", 5), ("dispatched", -10)))
    assert (found.by_movement, found.left) == ({1: 250, 2: -250, 3: 500}, 500)


@pytest.mark.parametrize(
    ("moves", "shares", "left"),
    [
        # twice as much was found to be there: 600 of 2000 g for 1000 are 300
        ([("counted", 1000), ("consumed", -600)], {2: 300}, 700),
        # 600 g had gone for 600 by then; the 400 left and the 400 found cost 400, so 400 g of them 200
        ([("consumed", -600), ("counted", 400), ("consumed", -400)], {1: 600, 3: 200}, 200),
        # all had gone, and all of its cost: what is found is free
        ([("consumed", -1000), ("counted", 50), ("consumed", -50)], {1: 1000}, 0),
        # a count that was wrong and the one that puts it right leave no trace
        ([("counted", -300), ("counted", 300), ("consumed", -500)], {1: 300, 2: -300, 3: 500}, 500),
        # 100 g missing, then 300 g too many: 100 of them come back for 100, 200 g are without a cost; 1000 over 1200 g
        ([("counted", -100), ("counted", 300), ("consumed", -600)], {1: 100, 2: -100, 3: 500}, 500),
        # a count below the book takes its cost off
        ([("counted", -250), ("consumed", -750)], {1: 250, 2: 750}, 0),
    ],
)
def test_what_a_count_finds_or_misses(moves: list[tuple[Way, int]], shares: dict[int, int], left: int) -> None:
    """1000 g came for 1000."""
    assert spread(1000, lot(("received", 1000), *moves)) == (shares, left)


@pytest.mark.parametrize(("bars", "each"), [(0, ()), (1, (100,)), (3, (33, 34, 33)), (4, (25, 25, 25, 25))])
def test_the_bars_bear_the_whole_to_the_cent(bars: int, each: tuple[int, ...]) -> None:
    """A third of 100 is 33.3, two thirds 66.7 and so 67."""
    assert each_bar(100, bars) == each


def test_one_minor_unit_over_three_bars_is_one_and_nothing_twice() -> None:
    """A third of 1 is less than a half, two thirds are more: the second bears it, whoever has it."""
    assert each_bar(1, 3) == (0, 1, 0)
    assert spread(1, lot(("yielded", 3), ("sold", -1), ("sold", -1), ("sold", -1))) == ({2: 1}, 0)


def test_a_lot_that_cost_nothing_costs_nothing_and_is_known() -> None:
    assert spread(0, lot(("received", 10), ("consumed", -10))) == ({}, 0)


@pytest.mark.parametrize(
    ("bars_mg", "offcuts_mg", "shares"),
    [(400, 100, [1000, 200]), (0, 100, [1200, 0]), (1, 999, [201, 999]), (999, 1, [1199, 1])],
)
def test_offcuts_bear_their_mass_but_no_wrapping(bars_mg: int, offcuts_mg: int, shares: list[int]) -> None:
    """1200 in all, of which 200 are bands: 1000 is shared by mass."""
    gave = [CostLot(1, 1, mass_mg=bars_mg, bars=True), CostLot(2, 1, mass_mg=offcuts_mg, beside=True)]
    assert between(1200, 200, gave) == shares
    assert between(1200, 200, gave[:1]) == [1200]


@given(cost=st.integers(0, 10**6), parts=st.lists(st.integers(1, 10**6), min_size=1, max_size=20))
def test_a_lot_used_up_has_given_out_its_cost_exactly(cost: int, parts: list[int]) -> None:
    moves = lot(("received", sum(parts)), *(("consumed", -part) for part in parts))
    found = spread(cost, moves)
    assert (sum(found.by_movement.values()), found.left) == (cost, 0)
