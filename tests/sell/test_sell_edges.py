"""So many bars leave and come back, and no more, on the day and the day before; ten bars, released on 4 May 2026."""

from datetime import date

import pytest
from shop import Shop

from ledger.errors import BadInput, Refused
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.rows.bars import bar_counts
from ledger.rows.lot import find_lot

OUT = date(2026, 5, 9)
STALL = "Quay market"


def where(shop: Shop) -> dict[str, int]:
    """Bars by where they are or went; what came back stands below zero among what went."""
    with shop.book.look() as rows:
        return {
            f"{one.where}, gone" if one.left else one.where: one.count
            for one in bar_counts(rows, [find_lot(rows, shop.batch).id])
        }


def test_all_bars_may_leave_and_no_more(shop: Shop) -> None:
    add_stall(shop.book, STALL)
    with pytest.raises(Refused, match="has 10 bars in the workshop; 11 cannot leave"):
        stall_out(shop.book, STALL, {shop.batch: 11}, on=OUT)
    stall_out(shop.book, STALL, {shop.batch: 10}, on=OUT)
    assert where(shop) == {"at a stall": 10}


def test_bars_that_leave_later_are_not_there_for_an_earlier_day(shop: Shop) -> None:
    """4 of 10 left on 9 May, so 6 are left for 8 May too."""
    add_stall(shop.book, STALL)
    stall_out(shop.book, STALL, {shop.batch: 4}, on=OUT)
    with pytest.raises(Refused, match="has 6 bars in the workshop; 7 cannot leave"):
        gift(shop.book, {shop.batch: 7}, to="a neighbour", on=date(2026, 5, 8))
    gift(shop.book, {shop.batch: 6}, to="a neighbour", on=date(2026, 5, 8))


def test_a_stall_is_closed_on_the_day_its_last_bars_went_out_or_later(shop: Shop) -> None:
    add_stall(shop.book, STALL)
    for day in (9, 10):
        stall_out(shop.book, STALL, {shop.batch: 2}, on=date(2026, 5, day))
    with pytest.raises(BadInput, match="went out on 2026-05-10"):
        stall_back(shop.book, STALL, {shop.batch: 0}, on=OUT)
    ended = stall_back(shop.book, STALL, {shop.batch: 1}, on=date(2026, 5, 10))
    assert (ended.sold, ended.back) == (((shop.batch, 3),), 1)
    assert where(shop) == {"on hand": 7, "sold, gone": 3}


def test_all_that_went_out_may_come_home_and_no_more(shop: Shop) -> None:
    add_stall(shop.book, STALL)
    stall_out(shop.book, STALL, {shop.batch: 4}, on=OUT)
    with pytest.raises(Refused, match=r"4 bars of batch .* went out, so 5 cannot have come back"):
        stall_back(shop.book, STALL, {shop.batch: 5}, on=OUT)
    assert stall_back(shop.book, STALL, {shop.batch: 4}, on=OUT).sold == ((shop.batch, 0),)
    assert where(shop) == {"on hand": 10}


def test_all_that_was_sold_may_come_back_and_no_more(shop: Shop) -> None:
    add_stall(shop.book, STALL)
    stall_out(shop.book, STALL, {shop.batch: 3}, on=OUT)
    stall_back(shop.book, STALL, {shop.batch: 0}, on=OUT)
    with pytest.raises(Refused, match=r"sold 3 bars of batch .*; 4 cannot have come back"):
        take_back(shop.book, {shop.batch: 4}, customer=None, stall=STALL, on=OUT, reason="split")
    take_back(shop.book, {shop.batch: 3}, customer=None, stall=STALL, on=OUT, reason="split")
    assert where(shop) == {"on hand": 7, "returned": 3, "sold, gone": 3, "returned, gone": -3}


@pytest.mark.parametrize(("day", "may"), [(8, False), (9, True), (10, True)])
def test_nothing_comes_back_before_the_day_it_was_sold(shop: Shop, day: int, may: bool) -> None:
    """Four bars were sold at the stall on 9 May."""
    add_stall(shop.book, STALL)
    stall_out(shop.book, STALL, {shop.batch: 4}, on=date(2026, 5, 8))
    stall_back(shop.book, STALL, {shop.batch: 0}, on=OUT)
    back = {"customer": None, "stall": STALL, "on": date(2026, 5, day), "reason": "torn"}
    if may:
        take_back(shop.book, {shop.batch: 4}, **back)
        assert where(shop)["returned"] == 4
    else:
        with pytest.raises(Refused, match=rf"sold 0 bars of batch {shop.batch} by 8 May 2026; 1 cannot have come back"):
            take_back(shop.book, {shop.batch: 1}, **back)
