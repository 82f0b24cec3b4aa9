"""Shares add up to the whole to the smallest coin, whatever the weights and in whatever order they are taken."""

from fractions import Fraction
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from ledger.units.money import share_of, share_out

WEIGHTS = st.lists(st.integers(0, 10**9), min_size=1, max_size=30).filter(any)


@given(total=st.integers(-(10**9), 10**9), weights=WEIGHTS)
def test_shares_add_up_to_the_whole(total: int, weights: list[int]) -> None:
    assert sum(share_out(total, weights)) == total


@given(total=st.integers(0, 10**9), weights=WEIGHTS)
def test_no_share_is_a_whole_coin_off_what_it_should_be(total: int, weights: list[int]) -> None:
    for share, weight in zip(share_out(total, weights), weights, strict=True):
        assert share >= 0
        assert abs(share - Fraction(total * weight, sum(weights))) <= 1


@given(total=st.integers(0, 10**9), whole=st.integers(1, 10**9), data=st.data())
def test_stretches_of_a_lot_add_up_however_it_is_cut(total: int, whole: int, data: st.DataObject) -> None:
    cuts = sorted(data.draw(st.lists(st.integers(0, whole), max_size=10)))
    stretches = pairwise([0, *cuts, whole])
    assert sum(share_of(total, whole, before, after) for before, after in stretches) == total
