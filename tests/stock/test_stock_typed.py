"""stock at the command line: the first line answers."""

import json
from datetime import date
from typing import Any

import pytest

from ledger.operations.bench.plan import PlanRequest, plan_batch

pytestmark = pytest.mark.usefixtures("frozen")


def test_the_first_line_says_how_much_there_is(shop: Any, run: Any) -> None:
    lines = run("stock").stdout.splitlines()
    assert lines[0] == "5 materials on hand in 5 lots; 10 bars of soap."
    assert any(shop.olive in line and "end Aug 2027" in line for line in lines)
    assert "Not in the workshop alone:" not in lines


def test_it_fits_a_screen_and_says_apart_what_is_not_in_the_workshop_alone(shop: Any, run: Any) -> None:
    run("stall", "add", "Quay market")
    run("stall", "out", "quay", f"{shop.batch}=2")
    lines = run("stock").stdout.splitlines()
    assert max(map(len, lines)) <= 80
    assert lines[lines.index("Not in the workshop alone:") + 1] == f"  {shop.batch}: workshop 8, Quay market 2"


def test_one_material_says_what_of_it_is_free(shop: Any, run: Any) -> None:
    plan_batch(shop.book, PlanRequest("plain-bar", date(2026, 6, 1)))
    shown = run("stock", "olive").stdout.replace("\xa0", " ")
    assert shown.startswith("olive oil: 4 400 g on hand in 1 lot, 3 800 g of it free.")


@pytest.mark.usefixtures("shop")
def test_one_kind_alone_and_a_kind_that_is_none(run: Any) -> None:
    assert [one["code"] for one in json.loads(run("stock", "--kind", "fat", "--json").stdout)] == [
        "coconut-oil",
        "olive-oil",
    ]
    assert "Did you mean fat?" in run("stock", "--kind", "fats", code=2).stderr


@pytest.mark.usefixtures("shop")
def test_an_unknown_material_is_bad_input_with_near_matches(run: Any) -> None:
    assert "Did you mean" in run("stock", "olve oil", code=2).stderr


@pytest.mark.usefixtures("book")
def test_an_empty_shelf_is_said_with_what_to_do_next(run: Any) -> None:
    assert run("stock").stdout == "Nothing is on hand yet.\nNext: soapledger receive SUPPLIER\n"


@pytest.mark.usefixtures("shop")
def test_a_lot_past_its_day_is_out_of_date_from_the_day_after(run: Any) -> None:
    """Accepted, but no batch takes it any more; its jar says the same (label of a lot)."""
    for number, last in (("A1", "2026-06-01"), ("A2", "2026-05-31")):  # today, and the day before
        run("receive", "tarn", "--line", f"coconut oil; 2 kg; lot {number}; best before {last}", "--accept", "--yes")
    shown = run("stock", "coconut").stdout
    (today,) = (line for line in shown.splitlines() if "1 Jun 2026" in line)
    assert "accepted" in today
    assert sum("out of date" in line for line in shown.splitlines()) == 2  # in the table, and what to do about it
    assert "1 lot is out of date: use none of it" in shown


def test_a_shop_that_is_called_workshop_is_not_ours(shop: Any, run: Any) -> None:
    """Where bars stand is told by what the place is: the name of a shop is its own."""
    run("customer", "add", "workshop", "--shop")
    run("customer", "terms", "workshop", "--sale-or-return")
    run("dispatch", "workshop", f"{shop.batch}=10")
    assert "Not in the workshop alone:" in run("stock").stdout
