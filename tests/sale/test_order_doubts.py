"""Before a dispatch is booked: bars that others wait for, and more than the order waits for, are asked about."""

from datetime import date
from typing import Any

import pytest
from shop import Shop

from ledger.operations.shop.orders import add_order, end_order
from ledger.rows.lot import find_lot
from ledger.rows.sell.sale import sales
from ledger.views.sell.order_doubts import order_doubts
from ledger.views.stock.promised import promises

ONE, SECOND = "26-001-4", "26-002-2"  # ten released bars of the plain bar each
TODAY, DUE = date(2026, 6, 1), date(2026, 11, 30)


def promised(shop: Shop, bars: dict[str, int], whom: str = "ida", due_on: date = DUE) -> int:
    return add_order(shop.book, whom, bars, on=TODAY, due_on=due_on)


def doubts(shop: Shop, bars: dict[str, int], filled: int | None = None) -> list[str]:
    rows = shop.rows()
    return order_doubts(rows, [(find_lot(rows, code), number) for code, number in bars.items()], filled)


@pytest.mark.parametrize(
    ("going", "left"), [(7, None), (8, "only 2 would be left"), (9, "only 1 would be left"), (10, "none would be left")]
)
def test_bars_of_a_batch_that_another_order_waits_for(selling: Shop, going: int, left: str | None) -> None:
    """Three of ten are promised: seven are free."""
    promised(selling, {ONE: 3})
    words = f"3 bars of batch {ONE} are promised to Ida Marsh (order 1, by 30 Nov 2026), and {left} for it."
    assert doubts(selling, {ONE: going}) == ([words] if left else [])
    assert doubts(selling, {SECOND: 10}) == []


# Twelve of twenty are promised of any batch: eight are free, of one batch or of both.
@pytest.mark.parametrize(("going", "left"), [({ONE: 8}, None), ({ONE: 9}, 11), ({ONE: 4, SECOND: 5}, 11)])
def test_bars_of_a_product_that_another_order_waits_for(selling: Shop, going: dict[str, int], left: int | None) -> None:
    promised(selling, {"plain-bar": 12})
    words = f"12 bars of Plain Bar are promised to Ida Marsh (order 1, by 30 Nov 2026), and only {left} would be left"
    assert doubts(selling, going) == ([f"{words} for it."] if left else [])


def test_who_is_due_last_goes_short_first(selling: Shop) -> None:
    promised(selling, {"plain-bar": 10}, due_on=date(2026, 6, 9))
    promised(selling, {"plain-bar": 9}, due_on=date(2026, 6, 8))
    assert doubts(selling, {ONE: 1}) == []
    (one,) = doubts(selling, {ONE: 2})
    assert one.startswith("10 bars of Plain Bar are promised to Ida Marsh (order 1, by 9 Jun 2026), and only 9 would")


def test_what_goes_on_an_order_is_what_it_waits_for(selling: Shop) -> None:
    order = promised(selling, {ONE: 10})
    assert doubts(selling, {ONE: 10}, order) == []
    assert len(doubts(selling, {ONE: 1})) == 1


def test_an_ended_order_waits_for_nothing(selling: Shop) -> None:
    end_order(selling.book, promised(selling, {ONE: 10}), on=TODAY, by="Nuala", reason="closed")
    assert doubts(selling, {ONE: 10}) == []


def test_a_batch_that_was_short_before_is_no_doubt_of_another(selling: Shop) -> None:
    promised(selling, {ONE: 11})
    assert doubts(selling, {SECOND: 10}) == []


@pytest.mark.parametrize(
    ("lines", "going", "said"),
    [
        ({ONE: 3}, {ONE: 3}, []),
        ({ONE: 3}, {ONE: 4}, [f"Order 1 waits for 3 bars of batch {ONE}; 4 go."]),
        ({ONE: 1}, {ONE: 4}, [f"Order 1 waits for 1 bar of batch {ONE}; 4 go."]),
        ({"plain-bar": 5}, {ONE: 3, SECOND: 2}, []),
        ({"plain-bar": 5}, {ONE: 3, SECOND: 3}, ["Order 1 waits for 5 bars of Plain Bar; 6 go."]),
        ({"plain-bar": 5, ONE: 2}, {ONE: 7}, []),
        ({"plain-bar": 5, ONE: 2}, {ONE: 8}, ["Order 1 waits for 7 bars of Plain Bar; 8 go."]),
        ({ONE: 2, SECOND: 2}, {ONE: 3, SECOND: 2}, [f"Order 1 waits for 2 bars of batch {ONE}; 3 go."]),
    ],
)
def test_more_than_the_order_waits_for(
    selling: Shop, lines: dict[str, int], going: dict[str, int], said: list[str]
) -> None:
    order = promised(selling, lines)
    assert doubts(selling, going, order) == said


def test_the_answer_no_writes_nothing_and_yes_books_it(selling: Shop, run: Any) -> None:
    promised(selling, {ONE: 10})
    words = ("dispatch", "tern", f"{ONE}=10", "--price", "4.50")
    said = (
        "10 bars of batch 26-001-4 are promised to Ida Marsh (order 1, by 30 Nov 2026), and none would be left for it."
    )
    before = selling.book.path.read_bytes()
    assert said in " ".join(run(*words, input="n\n", code=1).stderr.split())
    assert selling.book.path.read_bytes() == before
    assert said in " ".join(run(*words, "--yes").stderr.split())
    assert len(sales(selling.rows())) == 1
    assert [one.short for one in promises(selling.rows(), TODAY)] == [10]
    run("undo", "--yes")
    assert said in " ".join(run(*words, input="n\n", code=1).stderr.split())
    assert [one.short for one in promises(selling.rows(), TODAY)] == [0]


def test_more_than_is_still_to_go_is_asked_about_and_undone_it_waits_again(selling: Shop, run: Any) -> None:
    promised(selling, {ONE: 3})
    run("dispatch", "--order", "1", f"{ONE}=2")
    said = f"Order 1 waits for 1 bar of batch {ONE}; 3 go."
    assert said in run("dispatch", "--order", "1", f"{ONE}=3", input="n\n", code=1).stderr
    assert len(sales(selling.rows())) == 1
    run("undo", "--yes")
    assert run("dispatch", "--order", "1", f"{ONE}=3").stderr == ""
    run("undo", "--yes")
    assert (
        f"Order 1 waits for 3 bars of batch {ONE}; 4 go." in run("dispatch", "--order", "1", f"{ONE}=4", "--yes").stderr
    )
    assert len(sales(selling.rows())) == 1


def test_many_orders_take_no_more_statements_than_one(selling: Shop) -> None:
    counts = []
    for _ in range(2):
        promised(selling, {ONE: 1})
        rows = selling.rows()
        lot = find_lot(rows, ONE)
        run: list[str] = []
        rows.set_trace_callback(run.append)
        assert order_doubts(rows, [(lot, 10)], None)
        rows.set_trace_callback(None)
        counts.append(len(run))
        for _ in range(2):
            promised(selling, {"plain-bar": 1}, "tern-hall")
    assert counts[0] == counts[1] > 0
