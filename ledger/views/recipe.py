"""The recipes and their versions."""

import sqlite3
from dataclasses import dataclass

from ledger.domain.formulate import Lye, Target, lye_for, targets
from ledger.domain.names import match_name
from ledger.domain.recipe import Recipe, read_recipe
from ledger.domain.roles import check_role
from ledger.domain.saponification import FatCharge
from ledger.errors import BadInput
from ledger.views.material import MaterialCard, material_list


@dataclass(frozen=True)
class RecipeCard:
    """One recipe with its latest version."""

    id: int
    code: str
    name: str
    process: str
    material_id: int
    version_id: int
    version: int
    batches: int


_SQL = """
SELECT r.id, r.code, r.material_id, v.id AS version_id, v.number AS version, v.name, v.source,
       (SELECT count(*) FROM live_batch b JOIN recipe_version w ON w.id = b.recipe_version_id
        WHERE w.recipe_id = r.id) AS batches
FROM live_recipe r
JOIN live_recipe_version v ON v.id = (SELECT max(id) FROM live_recipe_version WHERE recipe_id = r.id)
ORDER BY v.name COLLATE NOCASE
"""


def recipe_list(rows: sqlite3.Connection) -> tuple[RecipeCard, ...]:
    """Every recipe, by name."""
    return tuple(
        RecipeCard(
            id=row["id"],
            code=row["code"],
            name=row["name"],
            process=read_recipe(row["source"], file=row["code"]).process,
            material_id=row["material_id"],
            version_id=row["version_id"],
            version=row["version"],
            batches=row["batches"],
        )
        for row in rows.execute(_SQL)
    )


def recipe_by_code(rows: sqlite3.Connection, text: str) -> RecipeCard:
    """The recipe meant by a code, a name or the start of one. Raises BadInput with near matches."""
    cards = recipe_list(rows)
    code = match_name(
        text,
        [(card.code, card.name) for card in cards],
        noun="recipe",
        add="soapledger recipe add FILE.toml",
    )
    return next(card for card in cards if card.code == code)


def recipe_version(rows: sqlite3.Connection, card: RecipeCard, number: int | None = None) -> tuple[int, int, Recipe]:
    """(row number, version number, recipe) of one version, the latest unless told. Raises BadInput."""
    wanted = card.version if number is None else number
    row = rows.execute(
        "SELECT id, source FROM live_recipe_version WHERE recipe_id = ? AND number = ?", (card.id, wanted)
    ).fetchone()
    if row is None:
        raise BadInput(f"{card.name} has no version {wanted}; its latest is {card.version}.")
    return row["id"], wanted, read_recipe(row["source"], file=f"recipe {card.code}")


def recipe_source(rows: sqlite3.Connection, version_id: int) -> str:
    """The text of one version, as it was given."""
    return str(rows.execute("SELECT source FROM recipe_version WHERE id = ?", (version_id,)).fetchone()[0])


def materials_named(rows: sqlite3.Connection, recipe: Recipe, *, file: str) -> dict[str, MaterialCard]:
    """Every material the recipe names, by the words it uses.

    Raises BadInput naming file and material for one that is not known, or that stands where its kind
    does not belong.
    """
    cards = material_list(rows)
    found = {}
    for word in [line.material for line in recipe.lines] + ([recipe.yields] if recipe.yields else []):
        try:
            code = match_name(
                word,
                [(card.code, card.name) for card in cards],
                noun="material",
                add=f'soapledger material add "{word}" --kind KIND',
            )
        except BadInput as error:
            raise BadInput(f"{file}: {error}") from None
        found[word] = next(card for card in cards if card.code == code)
    for line in recipe.lines:
        check_role(line.role, found[line.material].kind, found[line.material].name, where=file)
        if line.role == "alkali" and found[line.material].alkali_kind != recipe.alkali_kind:
            raise BadInput(
                f"{file}: the recipe reckons with {recipe.alkali_kind}, but {found[line.material].name} is "
                f"{found[line.material].alkali_kind}; mend the recipe or the material."
            )
    return found


@dataclass(frozen=True)
class RecipeSheet:
    """A version worked out in grams, with the figures of the materials (a batch uses those of its lots)."""

    recipe: Recipe
    version: int
    targets: tuple[Target, ...]
    lye: Lye | None
    materials: dict[str, MaterialCard]


def recipe_sheet(
    rows: sqlite3.Connection, card: RecipeCard, *, version: int | None = None, fats_mg: int | None = None
) -> RecipeSheet:
    """Work out one version, at its own size or for so much fat."""
    _, number, recipe = recipe_version(rows, card, version)
    named = materials_named(rows, recipe, file=f"recipe {card.code}")
    found = targets(recipe, fats_total_mg=fats_mg)
    lye = None
    if recipe.alkali_kind:
        charges = [fat_charge(named[t.line.material], t.target) for t in found if t.line.role == "fat"]
        alkali = named[recipe.of_role("alkali")[0].material]
        lye = lye_for(recipe, charges, purity_ppm=alkali.purity_ppm)
    return RecipeSheet(recipe, number, found, lye, named)


def fat_charge(card: MaterialCard, mass_mg: int, lot_low: int | None = None, lot_high: int | None = None) -> FatCharge:
    """A fat at the saponification value of its lot's certificate, else of the material.

    Raises BadInput for a fat that has neither.
    """
    low = lot_low if lot_low is not None else card.sap_low_mg_per_kg
    high = lot_high if lot_high is not None else card.sap_high_mg_per_kg
    if low is None or high is None:
        raise BadInput(
            f"{card.name} has no saponification value, so the lye cannot be reckoned; give it one: "
            f"soapledger material edit {card.code} --sap 188-192"
        )
    return FatCharge(card.name, mass_mg, low, high)
