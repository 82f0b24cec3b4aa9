"""What looks like a slip is asked about before it is booked, and only that."""

from datetime import date
from typing import Any

import pytest
from once import once
from shop import Shop

from ledger.domain.sale.pricing import Outlet
from ledger.rows.lot import find_lot
from ledger.rows.sell.sale import sales
from ledger.views.sale.doubts import Taken, unlikely, usual_each

ONE, SECOND = "26-001-4", "26-002-2"
AGAIN = "Sale 1, booked within the last hour, is the same bars there already."


@pytest.fixture
def one_sold(selling: Shop, run: Any, request: pytest.FixtureRequest) -> Shop:
    """Two bars went to the shop at 4.50, on 1 June or the day that the test names."""
    once(sell_two)(selling, run, getattr(request, "param", "2026-06-01"))
    return selling


def sell_two(_: Shop, run: Any, day: str) -> None:
    run("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--on", day)


def booked(shop: Shop) -> int:
    return len(sales(shop.rows()))


def test_the_same_sale_within_the_hour_is_asked_about(selling: Shop, run: Any, frozen: Any) -> None:
    words = ("dispatch", "tern", f"{ONE}=2", f"{SECOND}=1", "--price", "4.50")
    run(*words)
    assert AGAIN in run(*words, input="n\n", code=1).stderr
    assert booked(selling) == 1
    frozen.tick(3600)  # to the second
    assert AGAIN in run(*words, input="n\n", code=1).stderr
    frozen.tick(1)
    run(*words)
    assert booked(selling) == 2


@pytest.mark.parametrize(
    "other",
    [
        ("dispatch", "tern", f"{ONE}=3", "--price", "4.50"),
        ("dispatch", "tern", f"{SECOND}=2", "--price", "4.50"),
        ("dispatch", "tern", f"{ONE}=2", f"{SECOND}=1", "--price", "4.50"),
        ("dispatch", "ida", f"{ONE}=2", "--price", "4.50"),
        ("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--on", "2026-05-31"),
    ],
)
def test_another_sale_is_not(one_sold: Shop, run: Any, other: tuple[str, ...]) -> None:
    assert run(*other).stderr == ""
    assert booked(one_sold) == 2


def test_one_that_was_taken_back_is_not_there_already(selling: Shop, run: Any) -> None:
    words = ("dispatch", "tern", f"{ONE}=2", "--price", "4.50")
    run(*words)
    run("undo", "--yes")
    assert run(*words).stderr == ""
    assert AGAIN.replace("1", "2", 1) in run(*words, "--yes").stderr
    assert booked(selling) == 2


@pytest.mark.parametrize("one_sold", ["2026-05-30"], indirect=True)
@pytest.mark.parametrize(
    ("price", "asked"),
    [("45", True), ("0.45", True), ("22.50", True), ("22.49", False), ("0.90", True), ("0.91", False)],
)
def test_a_price_five_times_off_what_it_brought_is_asked_about(
    one_sold: Shop, run: Any, price: str, asked: bool
) -> None:
    """4.50 so far: from 22.50 up and from 0.90 down."""
    words = ("dispatch", "tern", f"{ONE}=3", "--price", price)
    if not asked:
        assert run(*words).stderr == ""
        return
    said = run(*words, input="n\n", code=1).stderr
    assert "a bar; they usually bring 4.50 EUR." in said
    assert booked(one_sold) == 1
    assert run(*words, "--yes").stdout.startswith("Sale 2")


def test_a_price_of_nothing_is_no_slip_and_the_first_of_all_is_believed(selling: Shop, run: Any) -> None:
    assert run("dispatch", "tern", f"{ONE}=2", "--price", "45").stderr == ""
    assert run("dispatch", "ida", f"{ONE}=1", "--price", "0").stderr == ""
    assert booked(selling) == 2


def test_the_price_that_was_set_goes_before_what_it_brought(selling: Shop, run: Any) -> None:
    run("dispatch", "tern", f"{ONE}=2", "--price", "45", "--on", "2026-05-30")
    run("price", "set", "plain", "6.50")
    assert "they usually bring 6.50 EUR" in run("dispatch", "tern", f"{ONE}=3", "--price", "45", code=1).stderr
    assert run("dispatch", "tern", f"{ONE}=3", "--price", "6").stderr == ""
    assert booked(selling) == 2


def test_more_paid_than_they_come_to_is_asked_about(selling: Shop, run: Any) -> None:
    words = ("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--paid")
    assert "9.00 EUR is what they come to, not 9.01 EUR." in run(*words, "9.01", "--cash", code=1).stderr
    run(*words, "9", "--cash")
    assert booked(selling) == 1


def test_takings_are_held_to_what_the_bars_usually_bring(selling: Shop, run: Any) -> None:
    """5000 for ten bars of 6.50 is 500.00 a bar; in the middle of 4, 5 and 9 stands 5."""
    lot = find_lot(selling.rows(), ONE).id
    outlet, day = Outlet(), date(2026, 6, 1)
    assert unlikely(selling.rows(), [Taken(lot, 10, 500_000)], outlet, day, "EUR") is None  # nothing to go by
    for price in ("4", "9", "5"):
        run("dispatch", "tern", f"{SECOND}=1", "--price", price, "--yes")
    assert usual_each(selling.rows(), [lot], outlet, day) == {lot: 500}
    run("price", "set", "plain", "6.50")
    assert usual_each(selling.rows(), [lot], outlet, day) == {lot: 650}
    found = unlikely(selling.rows(), [Taken(lot, 10, 500_000)], outlet, day, "EUR")
    assert found == "That is 500.00 EUR a bar; they usually bring 6.50 EUR."
    assert unlikely(selling.rows(), [Taken(lot, 10, 6000)], outlet, day, "EUR") is None
