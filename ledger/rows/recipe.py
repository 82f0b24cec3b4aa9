"""The versions of a recipe as they were understood when they were added; their texts are not read again."""

import json
import sqlite3
from collections.abc import Collection

from ledger.domain.recipe.figures import recipe_from
from ledger.domain.recipe.recipe import Recipe

# What was kept of a version is of the version, whatever entry kept it: so it is looked for in the file itself, behind
# what was known at an earlier entry.
_SQL = """
SELECT v.id, v.number, v.name, r.code, f.process, f.figures
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
    return recipe_from(row["figures"], name=row["name"], code=row["code"], process=row["process"])
