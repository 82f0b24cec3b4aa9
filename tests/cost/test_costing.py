"""What a batch bears of a lot's cost, to the minor unit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.cost.costing import (
    Move,
    Outflow,
    bars_and_offcuts,
    cost_shares,
    each_bar,
    labour_cost,
    lot_shares,
)


def test_first_in_first_out_of_the_textbook() -> None:
    # 100 at 10 and 200 at 12, issue 250: 100 x 10 + 150 x 12 = 2,800 out and 600 left.
    first = cost_shares(1000, 100, [Outflow(1, 100)])
    second = cost_shares(2400, 200, [Outflow(1, 150)])
    assert first[1] + second[1] == 2800
    assert 3400 - 2800 == 600


def test_a_correction_after_more_was_logged_than_there_was_takes_back_what_was_too_much() -> None:
    # A lot of 100 that cost 50: 80 and 40 logged, then 40 corrected to 20. The first bears 40, the second 10.
    assert cost_shares(50, 100, [Outflow(1, 80), Outflow(2, 40), Outflow(2, -20)]) == {1: 40, 2: 10}


def test_an_hour_and_a_half_at_fourteen_costs_twenty_one() -> None:
    assert labour_cost(90, 1400) == 2100


def test_half_a_cent_of_work_is_rounded_up() -> None:
    """A minute is 0.5 cents at 0.30 an hour, and less at 0.29."""
    assert (labour_cost(1, 30), labour_cost(1, 29)) == (1, 0)


def test_what_comes_back_from_a_batch_is_no_stock_that_came() -> None:
    """1000 g for 1000: 600 g went in and 100 g of it came back, 300 g were thrown away; half was used."""
    came, used = Move(1, 1000, "received"), Move(2, -600, "consumed")
    assert lot_shares(1000, [came, used, Move(3, 100, "consumed"), Move(4, -300, "wasted")]) == {
        2: 600,
        3: -100,
        4: 300,
    }
    assert lot_shares(1000, [came, Move(5, 1000, "counted"), used]) == {2: 300}  # twice as much was found to be there
    assert lot_shares(1000, [used]) == {}  # nothing came, so nothing is shared out


@pytest.mark.parametrize(
    ("bars_mg", "offcuts_mg", "shares"),
    [(400, 100, (1000, 200)), (400, 0, (1200, 0)), (0, 100, (1200, 0)), (1, 999, (201, 999)), (999, 1, (1199, 1))],
)
def test_offcuts_bear_their_mass_but_no_wrapping(bars_mg: int, offcuts_mg: int, shares: tuple[int, int]) -> None:
    """1200 in all, of which 200 are bands: 1000 is shared by mass."""
    assert bars_and_offcuts(1200, 200, bars_mg=bars_mg, offcuts_mg=offcuts_mg) == shares


@pytest.mark.parametrize(("bars", "each"), [(0, ()), (1, (100,)), (3, (33, 34, 33)), (4, (25, 25, 25, 25))])
def test_the_bars_bear_the_whole_to_the_cent(bars: int, each: tuple[int, ...]) -> None:
    """A third of 100 is 33.3, two thirds 66.7 and so 67."""
    assert each_bar(100, bars) == each


@given(cost=st.integers(0, 10**6), parts=st.lists(st.integers(1, 10**6), min_size=1, max_size=20))
def test_a_lot_used_up_has_given_out_its_cost_exactly(cost: int, parts: list[int]) -> None:
    shares = cost_shares(cost, sum(parts), [Outflow(key, part) for key, part in enumerate(parts)])
    assert sum(shares.values()) == cost
