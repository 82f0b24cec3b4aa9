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
    assert any(shop.olive in line and "end Aug 2027" in line and "workshop" in line for line in lines)


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
