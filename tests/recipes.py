"""Recipes written in tests and worked out from materials that no ledger holds."""

import json

from ledger.domain.recipe.reader import read_recipe
from ledger.rows.material import MaterialCard
from ledger.views.recipe.recipe import RecipeSheet, work_out


def material(name: str, kind: str, **figures: int | str | None) -> MaterialCard:
    """A material with only the figures that bear on the lye."""
    empty = dict.fromkeys(MaterialCard._fields)
    return MaterialCard(**{**empty, "id": 1, "code": name, "name": name, "kind": kind, **figures})


def fat(name: str, low_mg_per_kg: int, high_mg_per_kg: int | None = None) -> MaterialCard:
    """A fat with a range of saponification values, or one value on its certificate."""
    high = low_mg_per_kg if high_mg_per_kg is None else high_mg_per_kg
    return material(name, "fat", sap_low_mg_per_kg=low_mg_per_kg, sap_high_mg_per_kg=high)


def part(table: str, **words: object) -> str:
    """One part of a recipe file; words that are None are left out."""
    written = (f"{key} = {json.dumps(value)}" for key, value in words.items() if value is not None)
    return "\n".join([f"\n[[{table}]]", *written])


def worked(text: str, *cards: MaterialCard, process: str, superfat: int = 5) -> RecipeSheet:
    """A recipe worked out with these materials and a scale that reads 0.1 g."""
    head = f'name = "By hand"\ncode = "by-hand"\nprocess = "{process}"\nsuperfat = {superfat}\n'
    recipe = read_recipe(head + text, file="by-hand.toml")
    return work_out(recipe, 1, {card.name: card for card in cards}, scale_step_mg=100)


def bar_file(name: str, code: str, fats: dict[str, int], *, process: str = "cold", more: str = "") -> str:
    """A recipe file of 1000 g of fats by percent, lye at 5 % superfat and twice its water, ten bars of 100 g."""
    return "".join(
        [
            f'name = "{name}"\ncode = "{code}"\nprocess = "{process}"\nsuperfat = 5\nfats_total = "1000 g"\n',
            part("alkali", material="lye", kind="NaOH"),
            '\n[water]\nmaterial = "water"\nper_alkali = 2.0\n',
            *(part("fat", material=fat, percent=percent) for fat, percent in fats.items()),
            '\n[mould]\nbars = 10\nnet_weight = "100 g"\n',
            more,
        ]
    )
