"""Products: the soaps that bars are of, by their recipe or a portion of it."""

import sqlite3
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.opened import Rows
from ledger.units.names import named


class Product(NamedTuple):
    """A soap that bars are of, and the recipe by which it is priced."""

    material_id: int
    recipe_id: int
    code: str
    name: str


def products(rows: sqlite3.Connection) -> list[Product]:
    """Every soap that a recipe gives, or a portion of one that was made, by name."""
    found = rows.execute(
        """
        SELECT m.id, coalesce(
            (SELECT min(r.id) FROM live_recipe r WHERE r.material_id = m.id),
            (SELECT v.recipe_id FROM live_batch b JOIN recipe_version v ON v.id = b.recipe_version_id
             WHERE b.material_id = m.id ORDER BY b.id DESC LIMIT 1)) AS recipe, m.code, mr.name
        FROM live_material m JOIN live_material_revision mr
          ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
        WHERE m.kind = 'soap' AND recipe IS NOT NULL ORDER BY mr.name COLLATE NOCASE, m.id
        """
    )
    return [Product(*row) for row in found]


def materials_of_recipes(rows: sqlite3.Connection) -> dict[int, int]:
    """What each recipe gives, by row numbers."""
    return {row[0]: row[1] for row in rows.execute("SELECT id, material_id FROM live_recipe")}


def product_by_name(rows: Rows, text: str) -> Product:
    """The product meant by a short name, a name or the start of one. Raises BadInput with near matches."""
    return pick_product(products(rows), text)


def pick_product(known: list[Product], text: str) -> Product:
    """The same among those that were read."""
    if not known:
        raise BadInput(f"There is no product '{text}' here yet; a recipe makes one: soapledger recipe add FILE.toml")
    return named(text, known, noun="product", add="soapledger recipe add FILE.toml")
