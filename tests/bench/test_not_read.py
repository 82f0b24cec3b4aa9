"""What nobody read from the scale is not booked as if it was: never of lye and fragrance, and else it says so."""

import json
from typing import Any

import pytest
from making import MADE, deliver, lines_of, planned
from shop import PLAIN_BAR, Shop

from ledger.errors import Refused
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine

SCENT = '\n[[fragrance]]\nmaterial = "lavender oil"\npercent_of_fats = 2\n'


@pytest.fixture
def scented(shop: Shop) -> str:
    """A batch of the plain bar with a fragrance: 1 and 2 fats, 3 water, 4 lye, 5 fragrance."""
    add_material(shop.book, MaterialFacts("lavender oil", "Lavandula"), kind="fragrance", code=None)
    deliver(shop.book, DeliveryLine("lavender oil", 100_000, "LV", 500))
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "lav").replace("Plain Bar", "Lav") + SCENT, file="l.toml")
    return planned(shop.book, "lav")


def used(shop: Shop, code: str) -> list[int]:
    return [line.used for line in lines_of(shop.book, code)]


def test_lye_and_fragrance_stay_open_and_the_others_say_that_nobody_read_them(
    shop: Shop, run: Any, scented: str
) -> None:
    said = run("batch", "log", scented, "--as-planned").stdout
    assert used(shop, scented) == [600_000, 400_000, 293_652, 0, 0]
    assert "line 4 (sodium hydroxide) and line 5 (lavender oil). Add what it showed:" in " ".join(said.split())
    run("batch", "log", scented, "--line", "4=146.8 g", "--line", "5=20 g")
    shown = run("batch", "show", scented).stdout
    assert "Lines 1, 2, 3: as planned, not read from the scale." in shown
    record = json.loads(run("batch", "show", scented, "--json").stdout)
    assert [one["unread"] for one in record["materials"]] == ["as planned, not read"] * 3 + [None, None]


def test_poured_with_lye_that_nobody_read_is_refused_and_nothing_is_written(shop: Shop, run: Any, scented: str) -> None:
    words = ("batch", "log", scented, "--as-planned", "--line", "5=20 g", "--reading", "poured=14:05")
    assert "line 4 (sodium hydroxide). Add what it showed: --line 4=GRAMS." in run(*words, code=1).stderr
    assert used(shop, scented) == [0, 0, 0, 0, 0]
    run(*words, "--line", "4=146.8 g")
    assert used(shop, scented) == [600_000, 400_000, 293_652, 146_800, 20_000]


@pytest.mark.parametrize("number", [4, 5])
def test_no_door_takes_them_from_the_plan(shop: Shop, scented: str, number: int) -> None:
    line = lines_of(shop.book, scented)[number - 1]
    with pytest.raises(Refused, match="is read from the scale"):
        weigh(shop.book, scented, {number: [Weighed(line.target, unread="as planned, not read")]}, on=MADE, by="N")
    assert used(shop, scented)[number - 1] == 0


def test_a_correction_with_a_figure_is_read(run: Any, scented: str) -> None:
    run("batch", "log", scented, "--as-planned")
    run("batch", "log", scented, "--line", "1=598 g", "--correct")
    assert "Lines 2, 3: as planned, not read" in run("batch", "show", scented).stdout


def test_what_a_way_out_comes_to_is_reckoned_and_not_read(run: Any, scented: str) -> None:
    run("batch", "log", scented, "--as-planned", "--line", "4=146.8 g")
    run("batch", "correct", scented, "4=165 g", "--take", "lye")
    shown = run("batch", "show", scented).stdout
    assert "Lines 1, 2: as planned, not read from the scale." in shown
    assert "Lines 3, 4: as reckoned, not read from the scale." in shown
