"""The rack on the day, the day before and the day after: bars cut on 6 May 2026 and cured 28 days, until 3 June."""

from datetime import date, timedelta
from typing import Any

import pytest
from making import MADE, cut
from shop import PLAIN_BAR, Shop

from ledger.domain.release.bars import Passing
from ledger.operations.cure.weighing import weigh_bars
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.stock.lots import decide_lots
from ledger.rows.batch import find_batch
from ledger.views.cure.cure import OnTheRack, cure_list, rack_days

ENDS = date(2026, 6, 3)


def rack(shop: Shop, on: date) -> dict[str, OnTheRack]:
    """What is on the rack, but for the shop's own batch, which was released on 4 May."""
    with shop.book.look() as rows:
        return {one.batch_code: one for one in cure_list(rows, on=on) if one.batch_code != shop.batch}


@pytest.mark.parametrize(("days", "there"), [(-1, False), (0, True), (1, True)])
def test_bars_are_on_the_rack_from_the_day_of_the_cut(shop: Shop, days: int, there: bool) -> None:
    code = cut(shop.book)
    assert (code in rack(shop, MADE + timedelta(days))) is there


@pytest.mark.parametrize(("days", "left"), [(-1, 1), (0, 0), (1, -1)])
def test_the_days_left_come_to_nothing_on_the_day_the_cure_ends(shop: Shop, days: int, left: int) -> None:
    code = cut(shop.book)
    one = rack(shop, ENDS + timedelta(days))[code]
    assert (one.ready_on, one.days_left) == (ENDS, left)
    with shop.book.look() as rows:
        assert find_batch(rows, code).ready_on == ENDS


def test_bars_passed_and_then_held_stand_on_no_rack(shop: Shop) -> None:
    """Passed on 3 June, and on hold from that very day; the day before they were curing."""
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=ENDS, by="Nuala"))
    assert rack(shop, ENDS) == {}
    decide_lots(shop.book, [code], verdict="on hold", on=ENDS, by="Nuala", reason="a doubt")
    assert [list(rack(shop, ENDS + timedelta(days))) for days in (-1, 0, 1)] == [[code], [], []]


def test_bars_held_before_they_were_passed_stay_on_the_rack(shop: Shop) -> None:
    code = cut(shop.book)
    held = date(2026, 5, 20)
    decide_lots(shop.book, [code], verdict="on hold", on=held, by="Nuala", reason="a doubt")
    found = [rack(shop, held + timedelta(days))[code].status for days in (-1, 0, 1)]
    assert found == ["curing", "on hold", "on hold"]


def test_the_next_weighing_is_a_week_after_the_cut_or_after_the_last_one(shop: Shop) -> None:
    code = cut(shop.book)
    weigh_bars(shop.book, code, {"A": 131_000}, on=date(2026, 5, 13))
    found = [rack(shop, date(2026, 5, day))[code].weigh_on for day in (12, 13, 14)]
    assert found == [date(2026, 5, 13), date(2026, 5, 20), date(2026, 5, 20)]


@pytest.mark.parametrize(("weighed", "kinds"), [(26, {"ready", "weigh"}), (27, {"ready", "weigh"}), (28, {"ready"})])
def test_a_weighing_is_in_the_calendar_up_to_the_day_the_cure_ends(shop: Shop, weighed: int, kinds: set[str]) -> None:
    """A week after 27 May is 3 June, the day itself."""
    code = cut(shop.book)
    weigh_bars(shop.book, code, {"A": 125_000}, on=date(2026, 5, weighed))
    assert {one.kind for one in rack_days(tuple(rack(shop, date(2026, 5, 28)).values()))} == kinds


def test_the_first_to_be_ready_stands_first(shop: Shop) -> None:
    later, sooner = cut(shop.book, on=date(2026, 5, 8)), cut(shop.book, on=date(2026, 5, 6))
    assert later < sooner  # by their codes the other way about
    assert list(rack(shop, date(2026, 5, 10))) == [sooner, later]


def test_cooked_soap_is_usable_so_many_days_after_the_cut(shop: Shop, run: Any) -> None:
    """7 days after 6 May."""
    cooked = PLAIN_BAR.replace("plain-bar", "cooked").replace("Plain Bar", "Cooked").replace("cold", "hot")
    add_recipe(shop.book, f"{cooked}\n[cure]\nusable_from_days = 7\n", file="cooked.toml")
    code = cut(shop.book, "cooked")
    assert rack(shop, date(2026, 5, 12))[code].usable_from == date(2026, 5, 13)
    with shop.book.look() as rows:
        assert find_batch(rows, code).usable_from == date(2026, 5, 13)
    assert "13 May 2026" in run("cure", "list", "--on", "2026-05-12").stdout


@pytest.mark.parametrize(("earlier", "weekly"), [(2, True), (3, False)])
def test_bars_are_weighed_weekly_for_the_first_three_batches_and_then_before_the_pass(
    shop: Shop, earlier: int, weekly: bool
) -> None:
    """The shop made one of the recipe already; cut on 6 May, weighed on 13 May, and cured until 3 June."""
    for _ in range(earlier - 1):
        cut(shop.book)
    code = cut(shop.book)
    weigh_bars(shop.book, code, {"A": 131_000}, on=date(2026, 5, 13))
    assert rack(shop, date(2026, 5, 14))[code].weigh_on == (date(2026, 5, 20) if weekly else ENDS)
