"""A count by product, over every way it may really have gone: no bar is lost, and no batch goes unmarked."""

from datetime import date
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.shop.counting import Lying, counted
from ledger.domain.stock.promised import Coming, Wanted, kept


def date_of(day: int) -> date:
    return date(2026, 6, 1 + day)


BARS = st.lists(st.integers(1, 4), min_size=1, max_size=3)


@given(bars=BARS, shares=st.tuples(st.integers(0, 12), st.integers(0, 12)))
def test_whatever_really_was_sold_is_booked_or_marked(bars: list[int], shares: tuple[int, int]) -> None:
    standing = [Lying(lot, number) for lot, number in enumerate(bars, start=1)]
    there = sum(bars)
    still = min(shares[0], there)
    missing = min(shares[1], there - still)
    found = counted(standing, still=still, missing=missing)
    booked = {one.lot_id: one.bars for one in found.sold}
    lost = {one.lot_id: one.bars for one in found.missing}
    assert sum(booked.values()) == there - still - missing
    assert sum(lost.values()) == missing
    assert all(booked.get(one.lot_id, 0) + lost.get(one.lot_id, 0) <= one.bars for one in standing)
    assumed = {other for one in found.sold for other in one.others}
    for really in product(*(range(number + 1) for number in bars)):  # so many of each lot were really sold
        if sum(really) != there - still - missing:
            continue
        for lot, sold in enumerate(really, start=1):
            if sold > booked.get(lot, 0):
                assert lot in assumed, (standing, still, missing, really)


@given(
    wanted=st.lists(st.tuples(st.integers(1, 2), st.none() | st.integers(1, 3), st.integers(1, 9)), max_size=5),
    coming=st.lists(st.tuples(st.integers(1, 2), st.integers(0, 9), st.integers(0, 3)), max_size=3),
)
def test_no_bar_is_promised_twice_and_none_is_left_where_one_is_short(
    wanted: list[tuple[int, int | None, int]], coming: list[tuple[int, int, int]]
) -> None:
    asked = [Wanted(order, recipe, batch, bars, date_of(order)) for order, (recipe, batch, bars) in enumerate(wanted)]
    here = [Coming(recipe, batch, bars, date_of(ready)) for batch, (recipe, bars, ready) in enumerate(coming, start=1)]
    answers = kept(asked, here)
    used = {one.batch_id: 0 for one in here}
    for answer in answers:
        assert sum(part.bars for part in answer.parts) + answer.short == answer.wanted.bars
        for part in answer.parts:
            used[part.batch_id] += part.bars
    assert all(used[one.batch_id] <= one.bars for one in here)
    for answer in answers:
        want = answer.wanted
        fits = [one for one in here if one.recipe_id == want.recipe_id and want.batch_id in (None, one.batch_id)]
        assert not answer.short or all(used[one.batch_id] == one.bars for one in fits)
