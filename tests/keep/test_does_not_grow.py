"""An answer about one thing takes as much reading after four seasons as after one, whatever else was booked since."""

import sqlite3
from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

import pytest
from making import LOOKED_GOOD, cut, deliver
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.operations.label.bare import Bare, settle_bare
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.shop.orders import add_order
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.dependants import _TRUST
from ledger.rows.sell.order import _GONE

pytestmark = pytest.mark.usefixtures("frozen")


def season(shop: Shop, number: int) -> None:
    """Four deliveries, two batches of ten bars, most of them from these lots, released and sent to a shop."""
    made = date(2026, 3, 3) + timedelta(days=number)
    for material in ("olive oil", "coconut oil", "sodium hydroxide", "water"):
        deliver(shop.book, DeliveryLine(material, 2_000_000, f"N-{number}", 900, best_before=date(2027, 1, 1)), on=made)
    for _ in range(2):
        code = cut(shop.book, on=made)
        pass_bars(shop.book, code, Passing(on=made + timedelta(days=40), by="Nuala"))
        free = Releasing(on=made + timedelta(days=40), by="Nuala", anyway="a trial", bare="a trial", checks=LOOKED_GOOD)
        release_bars(shop.book, code, free)
        dispatch(shop.book, "larder", {code: 4}, on=made + timedelta(days=41), price_minor=450, note=None)


@pytest.fixture
def work(monkeypatch: pytest.MonkeyPatch, run: Any) -> Callable[..., tuple[int, int]]:
    """Run a command and say how many statements it took, and how many steps of SQLite's machine in tens."""
    real, counted = sqlite3.connect, {"statements": 0, "steps": 0}

    def statement(_text: str) -> None:
        counted["statements"] += 1

    def step() -> int:
        counted["steps"] += 1
        return 0

    def connect(*words: Any, **more: Any) -> sqlite3.Connection:
        raw: sqlite3.Connection = real(*words, **more)
        raw.set_trace_callback(statement)
        raw.set_progress_handler(step, 10)
        return raw

    def took(*words: str) -> tuple[int, int]:
        counted.update(statements=0, steps=0)
        with monkeypatch.context() as patched:
            patched.setattr(sqlite3, "connect", connect)
            run(*words)
        return counted["statements"], counted["steps"]

    return took


def test_no_answer_about_one_thing_grows_with_the_rest(shop: Shop, work: Any) -> None:
    for code, name in (("larder", "Harbour Larder"), ("quay", "Quay Shop")):
        add_customer(shop.book, CustomerDetails(name), kind="shop", code=code)
    add_order(shop.book, "quay", {"plain-bar": 2}, on=date(2026, 5, 5), due_on=date(2026, 5, 8))
    dispatch(shop.book, "quay", {shop.batch: 2}, on=date(2026, 5, 5), price_minor=450, note=None, order_id=1)
    received = (
        "receive",
        "tarnlow",
        "--accept",
        "--on",
        "2026-03-02",
        "--yes",
        "--line",
        "water; 1 kg; lot unknown; 1.00",
    )
    asked = (
        ("lot", "show", shop.olive),
        ("batch", "show", shop.batch),
        ("label", "check", shop.batch, "--market", "eu"),
        ("trace", shop.batch),
        ("trace", shop.lye),
        ("trace", "4471/2"),
        ("customer", "show", "quay"),
        received,
        ("undo", "--yes"),
        ("batch", "note", shop.batch, "soda ash"),
        ("undo", "--yes"),
        ("history", "--last", "3"),
        ("batch", "list", "--last", "1"),
        ("label", "runs", "--last", "3"),
        ("order", "show", "1"),
        ("order", "list"),
        ("cost", "--last", "1"),
    )
    outlet = Bare("plain-bar", None, "larder", date(2026, 3, 1), "Nuala", "its bars lie open")
    settle_bare(shop.book, outlet, notice="notice-shelf", code_on="tray")
    season(shop, 1)
    before = [work(*words) for words in asked]
    for number in (2, 3, 4):
        season(shop, number)
    grown = []
    for words, (statements, steps) in zip(asked, before, strict=True):
        more, further = work(*words)
        if more > statements or further > steps * 1.1:
            grown.append((words, statements, more, steps, further))
    assert not grown


def test_what_stands_on_an_assessment_is_asked_only_where_one_was_written(shop: Shop) -> None:
    with shop.book.look() as rows:
        for query in _TRUST:
            if "assessment" in query:
                plan = [row[3] for row in rows.execute(f"EXPLAIN QUERY PLAN {query}", {"entry": 1})]
                assert any("lot_id=?" in step for step in plan)
                assert not [step for step in plan if step.startswith(("SCAN t", "SCAN v", "SCAN s"))]


def test_what_went_on_orders_is_found_by_the_orders(shop: Shop) -> None:
    with shop.book.look() as rows:
        for which, step in (("s.order_id IS NOT NULL", "(order_id>?)"), ("s.order_id = :number", "(order_id=?)")):
            plan = [row[3] for row in rows.execute(f"EXPLAIN QUERY PLAN {_GONE.format(which)}", {"number": 1})]
            assert f"SEARCH t USING INDEX sale_order {step}" in plan
            assert "SEARCH t USING INDEX sale_line_sale (sale_id=?)" in plan
