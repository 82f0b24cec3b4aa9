"""Bars promised by a day: what is still to go, what will be late and why; an order filled, changed and ended."""

import json
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from making import batch_of, cut, planned, weighed
from once import once
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.domain.stock.promised import Coming, Wanted, kept
from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.shop.orders import add_order, change_order, end_order
from ledger.operations.stock.lots import decide_lots
from ledger.rows.history import last_entry
from ledger.rows.sell.order import order_lines
from ledger.storage.personal import PersonDetails
from ledger.views.shop.orders import order_view
from ledger.views.stock.promised import promises
from ledger.views.stock.stock import stock

pytestmark = pytest.mark.usefixtures("frozen")
TODAY, DUE = date(2026, 6, 1), date(2026, 6, 5)
ROSEMARY, OAT = 1, 2


@pytest.fixture
def hall(shop: Shop) -> Shop:
    once(with_a_customer)(shop)
    return shop


def with_a_customer(shop: Shop) -> None:
    """The worked shop (ten released bars of Plain Bar) and a customer."""
    add_customer(shop.book, CustomerDetails("Tern Hall", PersonDetails()), kind="shop", code="tern-hall")


def promised(shop: Shop, bars: dict[str, int], **more: Any) -> int:
    return add_order(shop.book, "tern-hall", bars, **{"on": TODAY, "due_on": DUE} | more)


def why(shop: Shop, on: date = TODAY) -> list[str]:
    return [words for one in promises(shop.rows(), on) for words in one.words]


# Bars that are ready on the day, the day before and the day after the promise is due.
@pytest.mark.parametrize(("ready", "late"), [(4, 0), (5, 0), (6, 1), (12, 7)])
def test_bars_ready_on_the_due_day_are_not_late_and_a_day_after_they_are(ready: int, late: int) -> None:
    (one,) = kept([Wanted(1, ROSEMARY, None, 6, DUE)], [Coming(ROSEMARY, 7, 6, date(2026, 6, ready))])
    assert one.holds is not bool(late)
    assert [part.late(DUE) for part in one.parts] == [late]


def test_who_is_due_first_is_served_first_and_a_batch_is_kept_for_whom_it_was_promised() -> None:
    """Ten of batch 7 ready, ten of batch 8 on 9 June: 6 of batch 8 are promised by name, then 12 and 8 of any."""
    wanted = [
        Wanted(1, ROSEMARY, None, 8, date(2026, 6, 7)),
        Wanted(2, ROSEMARY, None, 12, date(2026, 6, 6)),
        Wanted(3, ROSEMARY, 8, 6, date(2026, 6, 30)),
        Wanted(4, OAT, None, 1, date(2026, 6, 30)),
    ]
    coming = [Coming(ROSEMARY, 8, 10, date(2026, 6, 9)), Coming(ROSEMARY, 7, 10, None)]
    one, two, three, four = kept(wanted, coming)
    assert [(part.batch_id, part.bars) for part in two.parts] == [(7, 10), (8, 2)]
    assert [(part.batch_id, part.bars) for part in one.parts] == [(8, 2)]
    assert (one.short, two.short, three.short, four.short) == (6, 0, 0, 1)
    assert [(part.batch_id, part.bars) for part in three.parts] == [(8, 6)]


@pytest.mark.parametrize(("bars", "short"), [(1, 0), (10, 0), (11, 1), (1000, 990)])
def test_a_promise_above_what_will_be_there_is_said(hall: Shop, bars: int, short: int) -> None:
    promised(hall, {"plain-bar": bars})
    assert [one.short for one in promises(hall.rows(), TODAY)] == [short]
    assert bool(why(hall)) is bool(short)


def test_an_order_of_nothing_is_refused(hall: Shop) -> None:
    with pytest.raises(BadInput, match="above zero"):
        promised(hall, {"plain-bar": 0})
    with pytest.raises(BadInput, match="before the order of 1 Jun 2026"):
        promised(hall, {"plain-bar": 1}, due_on=date(2026, 5, 31))
    promised(hall, {"plain-bar": 1}, due_on=TODAY)


def test_curing_bars_come_late_and_the_rack_says_for_whom(hall: Shop, run: Callable[..., Any]) -> None:
    """Made on 6 May, cut on 7 May, cured for 28 days: ready on 4 June, one day after the order is due."""
    code = weighed(hall.book, planned(hall.book))
    cut_batch(hall.book, code, bars=10, on=date(2026, 5, 7), by="Nuala")
    ready = batch_of(hall.book, code).ready_on
    assert ready is not None
    made = run("order", "add", "tern-hall", f"{code}=6", "--due", date.fromordinal(ready.toordinal() - 1).isoformat())
    words = f"6 bars of Plain Bar ({code}) come 1 day late, from batch {code}"
    assert words in made.stderr
    rack = " ".join(run("cure", "list").stdout.split())
    assert words in rack
    assert words in json.loads(run("cure", "list", "--json").stdout)[0]["late_for"][0]
    run("order", "add", "tern-hall", "plain-bar=4", "--due", ready.isoformat())
    assert "order 2" not in run("cure", "list").stdout.casefold()


def test_a_promised_batch_that_is_passed_is_named_with_what_lets_it_go(hall: Shop, run: Callable[..., Any]) -> None:
    """The rack lists it no more, so looking there says nothing."""
    code = cut(hall.book, on=date(2026, 4, 2))
    order = str(promised(hall, {code: 6}))
    said = run("dispatch", "--order", order, "--yes", code=1).stderr
    assert f"Nothing of order {order} can go yet; see: soapledger cure list" in said
    pass_bars(hall.book, code, Passing(on=date(2026, 5, 5), by="Nuala", anyway="a trial"))
    said = run("dispatch", "--order", order, "--yes", code=1).stderr
    assert f"Batch {code} is passed for packing; once it may go: soapledger release {code}" in said
    assert "cure list" not in said
    promised(hall, {"plain-bar": 12})  # ten of them are released
    said = run("dispatch", "--order", "2", "--yes")
    assert f"soapledger release {code}" in said.stderr
    assert "Order 2: 2 bars still to go." in said.stdout


def test_an_erased_customer_s_open_orders_are_named(hall: Shop, run: Callable[..., Any]) -> None:
    filled, left = promised(hall, {"plain-bar": 2}), promised(hall, {"plain-bar": 5})
    dispatch(hall.book, "tern-hall", {hall.batch: 2}, on=TODAY, price_minor=450, note=None, order_id=filled)
    run("customer", "edit", "tern-hall", "--phone", "020 910 0166")
    said = run("customer", "erase", "tern-hall", "--reason", "asked", "--yes").stdout
    assert f"Their order {left} is still open, 5 bars. To end it:\n  soapledger order end {left} --by" in said
    assert f"Order {filled} of" not in said
    run("order", "end", str(left), "--by", "Nuala", "--reason", "erased")
    assert check(hall.rows()).findings == ()


def test_a_batch_that_is_not_cut_yet_may_be_promised(hall: Shop) -> None:
    code = planned(hall.book)
    order = promised(hall, {code: 4})
    assert [one.short for one in promises(hall.rows(), TODAY)] == [4]
    weighed(hall.book, code)
    cut_batch(hall.book, code, bars=10, on=date(2026, 5, 7), by="Nuala")
    assert [one.short for one in promises(hall.rows(), TODAY)] == [0]
    change_order(hall.book, order, {code: 2})
    assert [(one.batch, one.bars) for one in order_lines(hall.rows(), order)[order]] == [(code, 6)]


def test_a_dispatch_fills_it_and_undone_opens_it_again(hall: Shop) -> None:
    order = promised(hall, {"plain-bar": 6, hall.batch: 2}, price_minor=450)
    dispatch(hall.book, "tern-hall", {hall.batch: 5}, on=TODAY, price_minor=None, note=None, order_id=order)
    found = order_view(hall.rows(), order, TODAY)
    assert [(one.batch, one.gone, one.still) for one in found.lines] == [(None, 3, 3), (hall.batch, 2, 0)]
    line = hall.rows().execute("SELECT bars, gross_minor FROM live_sale_line").fetchone()
    assert tuple(line) == (5, 5 * 450)
    undo(hall.book, last_entry(hall.rows()))
    assert order_view(hall.rows(), order, TODAY).still == 8
    assert check(hall.rows()).findings == ()


def test_an_order_with_a_dispatch_is_not_taken_back(hall: Shop) -> None:
    order = promised(hall, {"plain-bar": 6})
    entry = last_entry(hall.rows())
    dispatch(hall.book, "tern-hall", {hall.batch: 6}, on=TODAY, price_minor=None, note=None, order_id=order)
    with pytest.raises(Refused, match="depends on it"):
        undo(hall.book, entry)
    assert order_view(hall.rows(), order, TODAY).stands == "gone"


def test_more_may_be_promised_and_no_more_taken_away_than_is_still_to_go(hall: Shop) -> None:
    order = promised(hall, {"plain-bar": 6})
    dispatch(hall.book, "tern-hall", {hall.batch: 2}, on=TODAY, price_minor=None, note=None, order_id=order)
    with pytest.raises(Refused, match="4 bars of Plain Bar are still to go on order 1; 5 cannot be taken"):
        change_order(hall.book, order, {"plain-bar": -5})
    change_order(hall.book, order, {"plain-bar": -4})
    assert order_view(hall.rows(), order, TODAY).stands == "gone"
    change_order(hall.book, order, {"plain-bar": 1})
    assert order_view(hall.rows(), order, TODAY).still == 1


def test_an_ended_order_promises_nothing_and_takes_nothing(hall: Shop) -> None:
    order = promised(hall, {"plain-bar": 12})
    with pytest.raises(BadInput, match="--by"):
        end_order(hall.book, order, on=TODAY, by=" ", reason="closed")
    end_order(hall.book, order, on=TODAY, by="Orla", reason="they closed")
    assert promises(hall.rows(), TODAY) == ()
    for again in (
        lambda: end_order(hall.book, order, on=TODAY, by="Orla", reason="closed"),
        lambda: change_order(hall.book, order, {"plain-bar": 1}),
        lambda: dispatch(
            hall.book, "tern-hall", {hall.batch: 1}, on=TODAY, price_minor=None, note=None, order_id=order
        ),
    ):
        with pytest.raises(Refused, match=r"Order 1 was ended on 1 Jun 2026 by Orla"):
            again()
    undo(hall.book, last_entry(hall.rows()))
    assert order_view(hall.rows(), order, TODAY).still == 12


def test_an_order_of_somebody_else_is_not_filled(hall: Shop) -> None:
    add_customer(hall.book, CustomerDetails("Gull Row", PersonDetails()), kind="shop", code="gull-row")
    order = promised(hall, {"plain-bar": 2})
    with pytest.raises(BadInput, match="no order 1 of theirs"):
        dispatch(hall.book, "gull-row", {hall.batch: 1}, on=TODAY, price_minor=None, note=None, order_id=order)


@pytest.mark.parametrize(("day", "overdue"), [(4, False), (5, False), (6, True)])
def test_what_is_here_and_not_gone_by_its_day_is_overdue(hall: Shop, day: int, overdue: bool) -> None:
    promised(hall, {"plain-bar": 2})
    assert [one.late for one in promises(hall.rows(), date(2026, 6, day))] == [overdue]


def test_what_is_free_is_in_the_workshop_and_may_leave(hall: Shop) -> None:
    """Of ten bars two are promised, three go to a stall; ten more that cure are free until they are held."""
    promised(hall, {"plain-bar": 2})
    assert [one.free for one in stock(hall.rows(), kind="soap")] == [8]
    add_stall(hall.book, "Quay market")
    stall_out(hall.book, "Quay market", {hall.batch: 3}, on=TODAY)
    assert [one.free for one in stock(hall.rows(), kind="soap")] == [5]
    new = cut(hall.book)
    assert [one.free for one in stock(hall.rows(), kind="soap")] == [15]
    decide_lots(hall.book, [new], verdict="on hold", on=TODAY, by="Nuala", reason="looked at")
    assert [one.free for one in stock(hall.rows(), kind="soap")] == [5]


def test_the_commands(hall: Shop, run: Callable[..., Any]) -> None:
    assert "No order yet" in run("order", "list").stdout
    run("order", "add", "tern-hall", "plain=6", "--due", "friday", "--price", "4.50", "--note", "call first")
    run("order", "add", "tern-hall", "plain=6", "--due", "tomorrow")
    told = run("stock", "plain").stdout
    assert "12 bars promised" in told
    assert ", 0 of it free" in told
    assert json.loads(run("stock", "--kind", "soap", "--json").stdout)[0]["promised"] == 12
    assert "Promised: 12 bars of Plain Bar (none still free)" in " ".join(run("stock").stdout.split())
    shown = run("order", "list").stdout
    assert "2 open orders, 12 bars still to go" in shown
    assert shown.index("2 Jun 2026") < shown.index("5 Jun 2026")
    assert "2 bars of Plain Bar are too few" in shown
    assert "5 Jun 2026" in run("order", "show", "1").stdout
    sent = run("dispatch", "--order", "2", "--yes")
    assert f"Order 2, Tern Hall: {hall.batch}=6" in sent.stdout
    assert "all of it went" in sent.stdout
    part = run("dispatch", "--order", "1", "--yes")
    assert "No released bars are left for 2 bars of Plain Bar" in part.stderr
    run("order", "change", "1", "plain=-1")
    assert "1 bar still to go" in run("order", "show", "order 1").stdout
    run("order", "end", "1", "--by", "Orla", "--reason", "they closed")
    run("order", "change", "1", "plain=-1", code=1)
    assert json.loads(run("order", "list", "--all", "--json").stdout)[0]["stands"] == "gone"
    assert "Write it like" in run("order", "change", "2", "plain=4", code=2).stderr
    assert "no order 9" in run("order", "show", "9", code=2).stderr
    run("dispatch", code=2)
    assert check(hall.rows()).findings == ()


@pytest.mark.parametrize(("day", "word"), [("2026-06-05", "will be late"), ("2026-06-06", "overdue")])
def test_the_list_says_late_before_the_day_is_over_and_overdue_after_it(
    hall: Shop, run: Callable[..., Any], frozen: Any, day: str, word: str
) -> None:
    promised(hall, {"plain-bar": 11})
    frozen.move_to(f"{day} 09:00:00")
    assert word in run("order", "list").stdout
