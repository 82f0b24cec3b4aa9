"""Each hazard is said once, with its source: at its limit not, a grain beyond it."""

from typing import Any

import pytest
from making import deliver, planned
from shop import PLAIN_BAR, Shop

from ledger.domain.recipe.hazards import InRecipe, Look, hazards_in
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.reference.hazards import hazards
from ledger.reference.tables import table_rows

PLAIN = Look("cold", (), 50_000, 333_333, "loaf")


def one(name: str, percent: float, *, stage: Any = "at trace", fragrance: bool = False) -> InRecipe:
    return InRecipe(name, name, fragrance, stage, round(percent * 10_000))


def said(**other: Any) -> list[str]:
    return hazards_in(PLAIN._replace(**other), hazards())


def test_an_ordinary_recipe_has_none() -> None:
    assert said(materials=[one("olive oil", 70), one("coconut oil", 25), one("castor oil", 5)]) == []


@pytest.mark.parametrize(
    ("at", "beyond", "word"),
    [
        ({"superfat_ppm": 200_000}, {"superfat_ppm": 200_001}, "superfat"),
        ({"lye_ppm": 250_000}, {"lye_ppm": 249_999}, "weak"),
        ({"lye_ppm": 400_000}, {"lye_ppm": 400_001}, "strong"),
        ({"materials": [one("castor oil", 15)]}, {"materials": [one("castor oil", 15.0001)]}, "sticky"),
        ({"materials": [one("stearic acid", 5)]}, {"materials": [one("stearic acid", 5.0001)]}, "seize"),
        ({"materials": [one("pink clay", 5)]}, {"materials": [one("pink clay", 5.0001)]}, "cracks"),
        ({"materials": [one("clove oil", 0.5)]}, {"materials": [one("clove oil", 0.5001)]}, "thicken"),
        (
            {"materials": [one("lavender", 6, fragrance=True)]},
            {"materials": [one("lavender", 6.0001, fragrance=True)]},
            "Fragrance",
        ),
    ],
)
def test_at_its_limit_nothing_and_a_grain_beyond_one_sentence(
    at: dict[str, Any], beyond: dict[str, Any], word: str
) -> None:
    assert said(**at) == []
    (sentence,) = said(**beyond)
    assert word in sentence
    assert sentence.endswith("(common practice, no source).")


def test_stearic_acid_is_asked_by_the_process() -> None:
    assert said(process="hot", materials=[one("stearic acid", 10)]) == []
    assert len(said(process="hot", materials=[one("stearic acid", 10.0001)])) == 1
    assert len(said(materials=[one("stearic acid", 12)])) == 1


@pytest.mark.parametrize("name", ["sugar", "wildflower honey", "stout beer", "sea salt", "goat milk"])
def test_in_the_lye_it_is_said_and_at_trace_not(name: str) -> None:
    assert said(materials=[one(name, 2)]) == []
    (sentence,) = said(materials=[one(name, 2, stage="with the lye")])
    assert sentence.startswith(name)


@pytest.mark.parametrize("name", ["salty caramel scent", "milkweed", "gingerale", "wineberry"])
def test_a_word_within_a_word_is_none(name: str) -> None:
    assert said(materials=[one(name, 2, stage="with the lye")]) == []


def test_two_lots_and_two_names_are_one_sentence() -> None:
    (sentence,) = said(materials=[one("white clay", 3), one("white clay", 1), one("pink clay", 2)])
    assert sentence.startswith("white clay and pink clay, 6.0 % of the fats")


def test_a_mould_of_aluminium_has_a_document() -> None:
    (sentence,) = said(mould="aluminium tray, 1 kg")
    assert "hydrogen" in sentence
    assert "New Jersey" in sentence
    assert said(mould=None) == []


def test_every_row_has_a_source_and_is_looked_at() -> None:
    assert len({row["key"] for row in table_rows("hazards.csv")}) == len(hazards())
    for row in hazards():
        assert row.source, row.text
        assert row.of in ("superfat", "lye", "share", "present", "fragrance", "mould"), row.text
        assert (row.below_ppm is None and row.over_ppm is None) == (row.of in ("present", "mould")), row.text


def test_the_recipe_the_plan_and_the_worksheet_say_it_once(shop: Shop, run: Any) -> None:
    add_material(shop.book, MaterialFacts("goat milk", "Caprae Lac", water_ppm=870_000), kind="liquid", code=None)
    deliver(shop.book, DeliveryLine("goat milk", 1_000_000, "M", 500))
    text = PLAIN_BAR.replace("plain-bar", "milky").replace("Plain Bar", "Milky").replace("loaf", "aluminum tin")
    add_recipe(shop.book, text + '\n[[liquid]]\nmaterial = "goat milk"\ngrams = 60\n', file="m.toml")
    for words in (("recipe", "show", "milky"), ("batch", "plan", "milky")):
        told = " ".join(run(*words).stdout.split())
        assert told.count("goat milk in the lye scorches unless it is frozen") == 1
        assert told.count("The mould is of aluminium") == 1
    assert planned(shop.book)  # an ordinary one has no more notes
