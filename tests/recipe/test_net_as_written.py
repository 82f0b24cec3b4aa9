"""A net weight is kept in the unit the recipe gives it in, and read in that unit from ledgers of earlier programs."""

import json
from dataclasses import replace
from datetime import date

import pytest
from making import cut
from shop import ADDRESS, PLAIN_BAR, SETUP, Shop

from ledger.domain.recipe.figures import figures_text, recipe_from
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.recipe.recipe import Recipe
from ledger.operations.house.setup import set_up
from ledger.operations.recipe.recipes import add_recipe
from ledger.views.label.label import label_text

OUNCES = PLAIN_BAR.replace('"100 g"', '"3.5 oz"')


def kept(recipe: Recipe, figures: str, text: str) -> Recipe:
    return recipe_from(figures, name=recipe.name, code=recipe.code, process=recipe.process, text=text)


def test_it_is_kept_as_written() -> None:
    """3.5 oz are 99.223 g by 28.349523125 g an ounce."""
    recipe = read_recipe(OUNCES, file="r.toml")
    again = kept(recipe, figures_text(recipe), "")
    assert (again.net_weight, again.net_weight_mg) == ("3.5 oz", 99_223)


@pytest.mark.parametrize(("text", "found"), [(OUNCES, "3.5 oz"), (PLAIN_BAR, "100 g"), ("broken = [", None)])
def test_figures_of_an_earlier_program_take_it_from_the_text(text: str, found: str | None) -> None:
    recipe = read_recipe(OUNCES, file="r.toml")
    earlier = json.dumps({key: value for key, value in json.loads(figures_text(recipe)).items() if key != "net_weight"})
    assert kept(recipe, earlier, text).net_weight == found


def test_it_is_printed_as_written(shop: Shop) -> None:
    set_up(shop.book, replace(SETUP, addresses={"eu": ADDRESS, "us": ADDRESS}))
    add_recipe(shop.book, OUNCES.replace("plain-bar", "ounces").replace("Plain Bar", "Ounces"), file="o.toml")
    code = cut(shop.book, "ounces")
    with shop.book.look() as rows:
        said = [label_text(rows, code, one, on=date(2026, 6, 1)).net_quantity for one in ("us-soap", "eu")]
    assert said == ["Net Wt 3.5 oz (99.2 g)", "99.2 g"]
