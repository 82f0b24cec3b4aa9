"""What the rack and the list of samples say on the day, the day before and the day after; cut 6 May, ready 3 June."""

from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from making import cut
from shop import Shop

from ledger.storage.tables.release import RetainedSample


@pytest.mark.parametrize(
    ("on", "first"),
    [
        ("2026-06-02", "0 batches ready to be passed, 1 still curing."),
        ("2026-06-03", "1 batch ready to be passed, 0 still curing."),
        ("2026-06-04", "1 batch ready to be passed, 0 still curing."),
    ],
)
def test_bars_are_ready_on_the_day_the_cure_ends(shop: Shop, run: Callable[..., Any], on: str, first: str) -> None:
    cut(shop.book)
    assert run("cure", "list", "--on", on).stdout.splitlines()[0] == first


@pytest.mark.parametrize(("on", "late"), [("2026-06-16", False), ("2026-06-17", True), ("2026-06-18", True)])
def test_two_weeks_after_it_says_how_long_they_have_been_ready(
    shop: Shop, run: Callable[..., Any], on: str, late: bool
) -> None:
    """3 June and 14 days is 17 June."""
    cut(shop.book)
    assert ("ready for 1" in run("cure", "list", "--on", on).stdout) is late


@pytest.mark.parametrize(("on", "due"), [("2026-05-12", False), ("2026-05-13", True), ("2026-05-14", True)])
def test_marked_bars_are_due_to_be_weighed_a_week_after_the_cut(
    shop: Shop, run: Callable[..., Any], on: str, due: bool
) -> None:
    code = cut(shop.book)
    assert (f"To be weighed: {code}." in run("cure", "list", "--on", on).stdout) is due


@pytest.mark.parametrize(("on", "over"), [("2026-10-30", 0), ("2026-10-31", 0), ("2026-11-01", 1)])
def test_a_sample_may_be_given_up_the_day_after_it_is_kept_until(
    shop: Shop, run: Callable[..., Any], on: str, over: int
) -> None:
    with shop.book.write("release") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.batch,)).fetchone()[0]
        until = date(2026, 10, 31)
        tx.add(RetainedSample(lot_id=lot, on=until, bars=1, kept_at="tin 3", keep_until=until))
        tx.say("Set aside.")
    said = run("samples", "--on", on).stdout
    assert f"1 bar kept as samples; {over} batch" in said
    assert said.count("may be given up") == over
