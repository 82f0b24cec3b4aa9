"""The declaration as saponified, worked out by hand for the plain bar: 600 g olive (190), 400 g coconut (257).

They take 114.0 + 102.8 = 216.8 g KOH, or 154.555 g NaOH; 146.826 g is 95 % of it, so 5 % of each fat is left.
Olive: 570 g with 570 x 0.190 x 39.99677 / 56.1053 = 77.206 g NaOH set free 77.206 / 39.99677 x 92.094 / 3 = 59.257 g
glycerol and give 587.949 g of soap. Coconut: 380 g with 69.621 g give 53.435 g and 396.186 g. Water 293.652 g. In all
1440.478 g.
"""

import json
from dataclasses import fields
from typing import Any

import pytest
from making import cut, planned, weighed
from shop import PLAIN_BAR, Shop

from ledger.operations.material.materials import MaterialFacts, edit_material
from ledger.operations.recipe.recipes import add_recipe, revise_recipe
from ledger.rows.batch import find_batch
from ledger.rows.material import material_by_code
from ledger.views.recipe.ingredients import bases_of_batch

AS_SAPONIFIED = PLAIN_BAR + '\n[label]\ndeclaration = "as saponified"\n'


def name_salts(shop: Shop, material: str, sodium: str) -> None:
    """Give a fat the name of its sodium soap."""
    with shop.book.look() as rows:
        card = material_by_code(rows, material)
    known = {field.name: getattr(card, field.name) for field in fields(MaterialFacts)}
    edit_material(shop.book, card.code, MaterialFacts(**{**known, "inci_sodium": sodium}))


@pytest.fixture
def declared(shop: Shop, run: Any) -> Any:
    """The names and masses, in g, that a new batch declares."""

    def answer() -> dict[str, float]:
        revise_recipe(shop.book, "plain-bar", AS_SAPONIFIED, file="plain-bar.toml")
        code = cut(shop.book)
        found = json.loads(run("label", "check", code, "--json").stdout)["label"]["declared"]
        assert sum(one["mass_mg"] for one in found) == 1_440_478
        masses = [one["mass_mg"] for one in found]
        assert masses == sorted(masses, reverse=True)
        return {one["inci"]: one["mass_mg"] / 1000 for one in found}

    return answer


@pytest.mark.usefixtures("frozen")
def test_soaps_glycerin_the_fat_left_and_water(shop: Shop, declared: Any) -> None:
    name_salts(shop, "olive oil", "SODIUM OLIVATE")
    name_salts(shop, "coconut oil", "SODIUM COCOATE")
    found = declared()
    by_hand = {
        "SODIUM OLIVATE": 587.949,
        "SODIUM COCOATE": 396.186,
        "AQUA": 293.652,
        "GLYCERIN": 112.691,
        "OLEA EUROPAEA FRUIT OIL": 30.0,
        "COCOS NUCIFERA OIL": 20.0,
    }
    assert set(found) == set(by_hand)
    for name, grams in by_hand.items():
        assert found[name] == pytest.approx(grams, abs=0.02), name


@pytest.mark.usefixtures("frozen")
def test_a_fat_without_a_salt_name_stands_under_its_own_with_its_alkali(shop: Shop, declared: Any) -> None:
    name_salts(shop, "olive oil", "SODIUM OLIVATE")  # coconut has none here
    found = declared()
    assert found["COCOS NUCIFERA OIL"] == pytest.approx(400, abs=0.02)  # all of it
    assert found["SODIUM HYDROXIDE"] == pytest.approx(69.621, abs=0.02)
    assert found["GLYCERIN"] == pytest.approx(59.257, abs=0.02)  # that of the olive alone


@pytest.mark.parametrize(
    ("when", "held"),
    [
        ("# nothing is held back\n", set()),
        ('when = "at trace"\nin_demand = true\n', set()),  # it cooks with the others
        ('when = "after the cook"\nin_demand = false\n', {"coconut oil"}),
    ],
)
def test_only_the_fat_that_was_held_back_is_known_as_held_back(shop: Shop, when: str, held: set[str]) -> None:
    text = PLAIN_BAR.replace("percent = 40\n", f"percent = 40\n{when}").replace('"cold"', '"hot"')
    add_recipe(shop.book, text.replace("plain-bar", "held").replace("Plain Bar", "Held"), file="p.toml")
    code = weighed(shop.book, planned(shop.book, "held"))
    with shop.book.look() as rows:
        found = bases_of_batch(rows, find_batch(rows, code).id)
    assert {one.lot.material for one in found} == {"olive oil", "coconut oil", "water", "sodium hydroxide"}
    assert {one.lot.material for one in found if one.held_back} == held
