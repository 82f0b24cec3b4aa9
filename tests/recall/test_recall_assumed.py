"""Bars whose batch was assumed are named by the recall of every batch they may be of."""

import csv
import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from market import bake
from once import once
from shop import Shop, work_a_shop


@pytest.fixture
def codes(shop: Shop, built: Any, run: Any, frozen: Any) -> list[str]:
    """Three batches of Rosemary; twelve bars by product at a stall, five came home: ten and two out, seven sold."""
    base = built("shop", work_a_shop)[0]
    path, made = built("four batches", lambda book: bake(book, {"Rosemary": 3, "Oat": 1}), base)
    shutil.copyfile(path, shop.book.path)
    frozen.move_to("2026-05-30 17:00:00")
    once(a_day_at_the_stall)(shop, run)
    return list(made["Rosemary"])


def a_day_at_the_stall(_: Shop, run: Any) -> None:
    run("stall", "out", "saturday", "rosemary=12")
    run("stall", "back", "saturday", "rosemary=5")


def test_every_candidate_names_the_bars_sold_and_those_at_hand(shop: Shop, codes: list[str], run: Any) -> None:
    """Booked as sold: seven of the first. So the third, of which none is booked gone, names them; and the first two's
    bars in the workshop, 3 and 10, may be of it too."""
    assert shop
    one, two, three = codes
    shown = " ".join(run("recall", "bar", three).stdout.split())
    assert f"7 bars of Rosemary sold at Saturday market on 30 May 2026, booked as batch {one}" in shown
    assert f"they may be of {three}." in shown
    found = json.loads(run("recall", "bar", three, "--json").stdout)
    assert [(each["batch_code"], each["bars"], each["where"]) for each in found["may_be"]] == [
        (one, 7, "sold at Saturday market"),
        (one, 3, "in the workshop"),
        (two, 10, "in the workshop"),
    ]
    assert found["totals"]["sold"] == 0  # apart from the counted ones


def test_its_report_says_so_on_page_one_and_its_list_has_them(codes: list[str], run: Any, read: Any) -> None:
    one, _, three = codes
    run("recall", "bar", three, "-o", "recall.pdf", "--csv", "call.csv")
    page = read(Path("recall.pdf").read_bytes()).text(0)
    assert "Of 20 bars it cannot be excluded that they are of it, since their batch was assumed." in page
    rows = list(csv.reader(Path("call.csv").read_text(encoding="utf-8").splitlines()))
    assert ["cannot be excluded: Rosemary sold at Saturday market", "", "", "", "7", one, "2026-05-30"] in rows


def test_a_trace_and_the_stock_say_so_until_the_list_is_ticked(codes: list[str], run: Any) -> None:
    one, two, three = codes
    assert "Cannot be excluded: 7 bars of Rosemary sold" in run("trace", three).stdout
    said = f"Taken for one another at a stall and not looked at since: {one}, {two}, {three}."
    assert said in " ".join(run("stock", "--kind", "soap").stdout.split())


def test_what_was_ticked_is_named_no_more(shop: Shop, codes: list[str], run: Any) -> None:
    """The evening by each batch's code, and the list ticked: no other batch is a candidate."""
    assert shop
    one, two, three = codes
    run("undo", "--yes")
    run("stall", "back", "saturday", f"{one}=4", f"{two}=1")
    assert json.loads(run("recall", "bar", three, "--json").stdout)["may_be"]
    run("stall", "ticked", "saturday")
    for code in codes:
        assert json.loads(run("recall", "bar", code, "--json").stdout)["may_be"] == []
    assert "Taken for one another" not in run("stock").stdout


def test_as_of_before_the_saturday_nothing_is_named(shop: Shop, codes: list[str], run: Any) -> None:
    before = shop.rows().execute("SELECT max(id) - 2 FROM entry").fetchone()[0]
    assert json.loads(run("recall", "bar", codes[2], "--json", "--as-of", str(before)).stdout)["may_be"] == []
