"""What nobody read from the scale is not booked as if it was: never of lye and fragrance, and else it says so."""

import json
from typing import Any

import pytest
from making import MADE, deliver, lines_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.errors import Refused
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine

SCENT = '\n[[fragrance]]\nmaterial = "lavender oil"\npercent_of_fats = 2\n'


@pytest.fixture
@once
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


def test_a_weight_typed_in_another_unit_is_kept_as_it_was_typed(shop: Shop, run: Any) -> None:
    """1 lb 5 oz is 21 x 28.349523125 g = 595.340 g (NIST SP 811); a plain number and grams are the ledger's own."""
    code = planned(shop.book)
    run("batch", "log", code, "--line", "1=1 lb 5 oz", "--line", "2=400", "--line", "3=0.293 kg")
    assert used(shop, code)[:3] == [595_340, 400_000, 293_000]
    assert "Line 1, olive oil: read as 1 lb 5 oz." in run("batch", "show", code).stdout
    record = json.loads(run("batch", "show", code, "--json").stdout)
    assert [one["read_as"] for one in record["materials"]] == ["1 lb 5 oz", None, None]
    assert [one["unread"] for one in record["materials"]] == [None, None, None]


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
        weigh(shop.book, scented, {number: [Weighed(line.target, note="as planned, not read")]}, on=MADE, by="N")
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


def test_a_volume_is_kept_as_measured_with_the_grams_it_comes_to(shop: Shop, run: Any, scented: str) -> None:
    # lavender oil 0.878 to 0.892 g/mL, the middle 0.885: 22.6 mL are 20.001 g
    told = run("batch", "log", scented, "--line", "5=22.6 mL").stderr
    assert "22.6 mL of lavender oil is 20 g, at 0.885 g/mL, the middle of 0.878 to 0.892, at 20 °C" in told
    assert used(shop, scented)[4] == 20_001
    assert "Line 5: measured as 22.6 mL, not read from the scale." in run("batch", "show", scented).stdout


def test_lye_is_never_measured_by_volume(shop: Shop, run: Any, scented: str) -> None:
    error = run("batch", "log", scented, "--line", "4=150 mL", code=2).stderr
    assert "150 mL: sodium hydroxide is weighed, never measured by volume; write the weight of" in error
    assert used(shop, scented) == [0, 0, 0, 0, 0]


@pytest.mark.parametrize(
    ("typed", "way"), [("0.6 g", "less"), ("600 kg", "more"), ("0.66 g", "less"), ("0.54 g", "less")]
)
def test_a_weight_a_thousand_times_off_is_never_taken_silently(
    shop: Shop, run: Any, scented: str, typed: str, way: str
) -> None:
    error = run("batch", "log", scented, "--line", f"1={typed}", code=2).stderr
    assert "Line 1 asks for 600 g of olive oil, not" in error
    assert f", a thousand times {way}; if the scale showed" in error
    assert used(shop, scented) == [0, 0, 0, 0, 0]


@pytest.mark.parametrize("typed", ["0.53 g", "0.67 g"])
def test_what_is_no_slip_of_a_point_is_asked_about_without_one(run: Any, scented: str, typed: str) -> None:
    error = run("batch", "log", scented, "--line", f"1={typed}", code=2).stderr
    assert "look at the scale" in error
    assert "a thousand times" not in error


def test_a_correction_a_thousand_times_off_is_asked_about(run: Any, scented: str) -> None:
    run("batch", "log", scented, "--as-planned", "--line", "4=146.8 g")
    said = run("batch", "correct", scented, "4=0.15 g", input="n\n", code=1).stderr
    assert "Line 4 asks for 146.8 g of sodium hydroxide, not 0.15 g, a thousand times less; if the scale" in said
