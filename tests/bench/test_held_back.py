"""Fats held back: at trace they cook with the others; after the cook the pot is judged without them, the bar with."""

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
from ledger.views.bench.worksheet import worksheet


def held(process: str, when: str, in_demand: str, *, olive: int = 60, coconut: int = 20, shea: int = 20) -> str:
    """The plain bar with a part of it held back, in percent."""
    text = PLAIN_BAR.replace("plain-bar", "held").replace("Plain Bar", "Held").replace('"cold"', f'"{process}"')
    text = text.replace("percent = 60", f"percent = {olive}").replace("percent = 40", f"percent = {coconut}")
    part = f'[[fat]]\nmaterial = "shea butter"\npercent = {shea}\nwhen = "{when}"\nin_demand = {in_demand}\n'
    return text.replace("[mould]", f"{part}\n[mould]")


@pytest.fixture
@once
def shea(shop: Shop) -> Shop:
    """The shop with shea butter, whose certificate says 180."""
    facts = MaterialFacts("shea butter", "Butyrospermum Parkii Butter", None, 170_000, 190_000, "a paper")
    add_material(shop.book, facts, kind="fat", code=None)
    deliver(shop.book, DeliveryLine("shea butter", 1_000_000, "SB-2", 1300, sap_mg_per_kg=(180_000, 180_000)))
    return shop


@pytest.mark.parametrize("process", ["cold", "hot"])
def test_a_fat_at_trace_is_in_the_pot_while_it_cooks(shea: Shop, process: str) -> None:
    """It was refused in hot process, as if it came after the cook, and said to stay as it is."""
    add_recipe(shea.book, held(process, "at trace", "true"), file="h.toml")
    code = planned(shea.book, "held")
    # 201.4 x 0.71288755 x 0.95 = 136.397 g, and all of it cooks with all of the fats
    assert [line.target for line in lines_of(shea.book, code) if line.role == "alkali"] == [136_397]
    sheet = worksheet(shea.rows(), code, program="test")
    assert sheet.before_addition is None
    assert not any("mostly stays as it is" in note for note in sheet.notes)
    assert any("what is left is a share of every fat" in note for note in sheet.notes)
    lines = {line.material: line for line in lines_of(shea.book, code)}
    weigh(
        shea.book, code,
        {lines[name].number: [Weighed(lines[name].target)] for name in ("olive oil", "coconut oil", "water")},
        on=MADE, by="Nuala",
    )  # fmt: skip
    soda = lines["sodium hydroxide"].number
    # 150 g are worth 150 / 0.71288755 = 210.41 g KOH, for 201.4 g of all the fats: at trace it would be too late
    with pytest.raises(Refused, match=r"with what goes in at trace at its target, has a superfat of [-−]4\.47 %"):
        weigh(shea.book, code, {soda: [Weighed(150_000)]}, on=MADE, by="Nuala")
    found = weigh(shea.book, code, {soda: [Weighed(136_397)]}, on=MADE, by="Nuala")
    assert found.before_addition is None
    assert found.as_meant is not None
    assert abs(found.as_meant.nominal_ppm - 50_000) <= 10
    found = weigh(shea.book, code, {lines["shea butter"].number: [Weighed(200_000)]}, on=MADE, by="Nuala")
    assert found.before_addition is None
    assert abs((found.superfat_ppm or 0) - 50_000) <= 10


def test_too_much_of_a_fat_after_the_cook_is_told_by_what_the_bar_becomes(shea: Shop, run: Any) -> None:
    """Its pot has the 5 % of the recipe, and the bar was called an ordinary one."""
    add_recipe(shea.book, held("hot", "after the cook", "false", olive=60, coconut=35, shea=5), file="h.toml")
    code = planned(shea.book, "held")
    takes = {
        line.number: [Weighed(line.target)] for line in lines_of(shea.book, code) if line.material != "shea butter"
    }
    weigh(shea.book, code, takes, on=MADE, by="Nuala")
    number = next(line.number for line in lines_of(shea.book, code) if line.material == "shea butter")
    said = " ".join(run("batch", "correct", code, f"{number}=150 g").stdout.replace("\u00a0", " ").split())
    # in the pot 600 x 190 + 350 x 257 = 203.95 g KOH, 95 % of it as lye: 193.7525; with 150 x 180 = 27 g more over all
    # the fats 1 - 193.7525 / 230.95 = 16.11 %
    assert "ordinary bar" not in said
    assert "1. pour: Pour it as it is: a soft, greasy bar that will not keep" in said
    assert "superfat over all the fats 16.11 %, in the pot 5.00 %" in said


def test_a_fat_after_the_cook_at_its_target_is_an_ordinary_bar(shea: Shop, run: Any) -> None:
    add_recipe(shea.book, held("hot", "after the cook", "false", olive=60, coconut=38, shea=2), file="h.toml")
    code = planned(shea.book, "held")
    number = next(line.number for line in lines_of(shea.book, code) if line.material == "shea butter")
    said = " ".join(run("batch", "correct", code, f"{number}=22 g").stdout.replace("\u00a0", " ").split())
    # 600 x 190 + 380 x 257 = 211.66, x 0.95 = 201.077; 22 x 180 = 3.96: 1 - 201.077 / 215.62 = 6.74 %
    assert "Pour it as it is: an ordinary bar; superfat over all the fats 6.74 %, in the pot 5.00 %" in said
    assert "--take pour" in said


def test_an_oil_that_draws_in_the_jar_is_held_back_from_nothing(shop: Shop, run: Any) -> None:
    text = 'name = "Drawn"\ncode = "drawn"\nprocess = "infusion"\n\n[infusion]\nyields = "olive oil"\n\n'
    add_recipe(shop.book, text + '[[part]]\nmaterial = "olive oil"\ngrams = 500\n', file="d.toml")
    code = planned(shop.book, "drawn")
    assert worksheet(shop.rows(), code, program="test").notes == ()
    assert "superfat" not in run("batch", "show", code).stdout
