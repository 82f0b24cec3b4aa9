"""The recipes, and their versions as they were understood when they were added: their texts are not read again."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.domain.recipe.figures import recipe_from
from ledger.domain.recipe.recipe import Recipe
from ledger.rows.batch import BatchRow
from ledger.rows.opened import maybe_day
from ledger.units.names import named
from ledger.units.words import Process

# What was kept of a version is of the version, whatever entry kept it: so it is looked for in the file itself, behind
# what was known at an earlier entry.
_SQL = """
SELECT v.id, v.number, v.name, v.source, r.code, f.process, f.figures
FROM live_recipe_version v JOIN recipe r ON r.id = v.recipe_id
JOIN main.recipe_figures f ON f.recipe_version_id = v.id
"""


def kept_version(rows: sqlite3.Connection, version_id: int | None) -> Recipe | None:
    """One version by its row number; None where there is none."""
    return versions_by_id(rows, [version_id]).get(version_id) if version_id is not None else None


def versions_by_id(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, Recipe]:
    """Several versions by their row numbers, in one statement."""
    query = _SQL + " WHERE v.id IN (SELECT value FROM json_each(?))"
    return {row["id"]: _recipe(row) for row in rows.execute(query, (json.dumps(sorted(numbers)),))}


def kept_versions(rows: sqlite3.Connection, recipe_id: int) -> dict[int, tuple[int, Recipe]]:
    """Every version of a recipe by its number, the first first: (row number, recipe)."""
    found = rows.execute(_SQL + " WHERE r.id = ? ORDER BY v.number", (recipe_id,))
    return {row["number"]: (row["id"], _recipe(row)) for row in found}


def _recipe(row: sqlite3.Row) -> Recipe:
    kept, text = row["figures"], row["source"]
    return recipe_from(kept, name=row["name"], code=row["code"], process=row["process"], text=text)


class RecipeCard(NamedTuple):
    """One recipe with its latest version."""

    id: int
    code: str
    name: str
    process: Process
    material_id: int
    version_id: int
    version: int


class ListedRecipe(NamedTuple):
    """Likewise, and how many batches were ever planned from it."""

    id: int
    code: str
    name: str
    process: Process
    material_id: int
    version_id: int
    version: int
    batches: int


_CARD = "r.id, r.code, v.name, f.process, r.material_id, v.id AS version_id, v.number AS version"
_BATCHES = """(SELECT count(*) FROM live_batch b JOIN recipe_version w ON w.id = b.recipe_version_id
  WHERE w.recipe_id = r.id) AS batches"""
_FROM = """
FROM live_recipe r
JOIN live_recipe_version v ON v.id = (SELECT max(id) FROM live_recipe_version WHERE recipe_id = r.id)
JOIN main.recipe_figures f ON f.recipe_version_id = v.id
ORDER BY v.name COLLATE NOCASE
"""


def recipe_list(rows: sqlite3.Connection) -> tuple[ListedRecipe, ...]:
    """Every recipe, by name, with its batches counted."""
    return tuple(ListedRecipe(**dict(row)) for row in rows.execute(f"SELECT {_CARD}, {_BATCHES} {_FROM}"))


def recipe_cards(rows: sqlite3.Connection) -> tuple[RecipeCard, ...]:
    """Every recipe, by name."""
    return tuple(RecipeCard(**dict(row)) for row in rows.execute(f"SELECT {_CARD} {_FROM}"))


def recipe_by_code(rows: sqlite3.Connection, text: str) -> RecipeCard:
    """The recipe meant by a code, a name or the start of one. Raises BadInput with near matches."""
    return named(text, recipe_cards(rows), noun="recipe", add="soapledger recipe add FILE.toml")


def recipe_source(rows: sqlite3.Connection, version_id: int) -> str:
    """The text of one version, as it was given."""
    return str(rows.execute("SELECT source FROM recipe_version WHERE id = ?", (version_id,)).fetchone()[0])


def latest_assessment_text(rows: sqlite3.Connection, recipe_id: int) -> str | None:
    """The text of the safety assessment booked last for a recipe; None when there is none."""
    found = rows.execute(
        "SELECT source FROM live_assessment WHERE recipe_id = ? ORDER BY id DESC LIMIT 1", (recipe_id,)
    ).fetchone()
    return found and str(found[0])


class Covered(NamedTuple):
    """What a report says of an ingredient beyond its letters: its name there, or the assessor's word on it."""

    inci: str
    named: str | None
    word: str | None
    highest_ppm: int | None
    by: str | None
    on: date | None


def covered_by_latest(rows: sqlite3.Connection, recipe_id: int) -> tuple[int, tuple[Covered, ...]] | None:
    """The number of the assessment booked last for a recipe, with what was matched or written to it since."""
    last = rows.execute("SELECT max(id) FROM live_assessment WHERE recipe_id = ?", (recipe_id,)).fetchone()[0]
    if last is None:
        return None
    found = rows.execute(
        'SELECT inci, named, word, highest_ppm, by, "on" FROM live_assessment_covers '
        "WHERE assessment_id = ? ORDER BY id",
        (last,),
    )
    return last, tuple(Covered(**{**dict(row), "on": maybe_day(row["on"])}) for row in found)


def recipe_of(rows: sqlite3.Connection, batch: BatchRow) -> Recipe | None:
    """The recipe version a batch was planned from; none for a combined drum."""
    return kept_version(rows, batch.recipe_version_id)
