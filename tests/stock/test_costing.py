"""What a batch bears of a lot's cost, to the minor unit."""

from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.stock.costing import Outflow, cost_shares, labour_cost


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


@given(cost=st.integers(0, 10**6), parts=st.lists(st.integers(1, 10**6), min_size=1, max_size=20))
def test_a_lot_used_up_has_given_out_its_cost_exactly(cost: int, parts: list[int]) -> None:
    shares = cost_shares(cost, sum(parts), [Outflow(key, part) for key, part in enumerate(parts)])
    assert sum(shares.values()) == cost
