"""The versions of a recipe as they were understood when they were added; their texts are not read again."""

import sqlite3

from ledger.domain.recipe import Recipe
from ledger.domain.recipe_figures import recipe_from

# What was kept of a version is of the version, whatever entry kept it: so it is looked for in the file itself, behind
# what was known at an earlier entry.
_SQL = """
SELECT v.id, v.number, v.name, r.code, f.process, f.figures
FROM live_recipe_version v JOIN recipe r ON r.id = v.recipe_id
JOIN main.recipe_figures f ON f.recipe_version_id = v.id
"""


def kept_version(rows: sqlite3.Connection, version_id: int | None) -> Recipe | None:
    """One version by its row number; None where there is none."""
    row = rows.execute(_SQL + " WHERE v.id = ?", (version_id,)).fetchone()
    return _recipe(row) if row else None


def kept_versions(rows: sqlite3.Connection, recipe_id: int) -> dict[int, tuple[int, Recipe]]:
    """Every version of a recipe by its number, the first first: (row number, recipe)."""
    found = rows.execute(_SQL + " WHERE r.id = ? ORDER BY v.number", (recipe_id,))
    return {row["number"]: (row["id"], _recipe(row)) for row in found}


def _recipe(row: sqlite3.Row) -> Recipe:
    return recipe_from(row["figures"], name=row["name"], code=row["code"], process=row["process"])
