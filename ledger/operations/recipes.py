"""Add a recipe, or its next version."""

from dataclasses import dataclass

from ledger.domain.recipe import Recipe, read_recipe
from ledger.errors import BadInput, Refused
from ledger.storage.book import Book
from ledger.storage.tables import Material, MaterialRevision, RecipeVersion
from ledger.storage.tables import Recipe as RecipeRow
from ledger.views.material import material_list
from ledger.views.recipe import materials_named, recipe_by_code, recipe_list, recipe_source, recipe_version


@dataclass(frozen=True)
class RecipeAdded:
    """A recipe version as it was booked, with the one before where there was one."""

    code: str
    version: int
    recipe: Recipe
    before: Recipe | None


def add_recipe(book: Book, text: str, *, file: str) -> RecipeAdded:
    """Book a new recipe, and the soap it makes as a material of its own.

    Raises BadInput with file and place for what cannot be read, an unknown material or a code in use;
    Refused for fats that do not add up to 100 %.
    """
    recipe = read_recipe(text, file=file)
    with book.write("recipe add") as tx:
        if any(card.code == recipe.code for card in recipe_list(tx.rows)):
            raise BadInput(
                f"{file}: there is a recipe '{recipe.code}' already; make its next version with: "
                f"soapledger recipe edit {recipe.code} {file}"
            )
        named = materials_named(tx.rows, recipe, file=file)
        if recipe.yields:
            product = named[recipe.yields].id
            if named[recipe.yields].kind not in ("fat", "intermediate"):
                raise BadInput(
                    f"{file}: an infusion gives an oil (kind fat) or another intermediate; "
                    f"{recipe.yields} is of the kind {named[recipe.yields].kind}."
                )
        else:
            if any(card.code == recipe.code for card in material_list(tx.rows)):
                raise BadInput(f"{file}: a material is called '{recipe.code}' already; choose another code.")
            material = tx.add(Material(code=recipe.code, kind="soap"))
            assert material.id is not None
            tx.add(MaterialRevision(material_id=material.id, name=recipe.name))
            product = material.id
        row = tx.add(RecipeRow(code=recipe.code, material_id=product))
        assert row.id is not None
        tx.add(RecipeVersion(recipe_id=row.id, number=1, name=recipe.name, source=text))
        tx.say(f"Added recipe {recipe.name} ({recipe.code}).")
    return RecipeAdded(recipe.code, 1, recipe, None)


def edit_recipe(book: Book, code: str, text: str, *, file: str) -> RecipeAdded:
    """Book the next version of a recipe; batches keep the version they were planned from.

    Raises BadInput like `add_recipe`, Refused when nothing changed or the process would.
    """
    recipe = read_recipe(text, file=file)
    with book.write("recipe edit") as tx:
        card = recipe_by_code(tx.rows, code)
        version_id, number, before = recipe_version(tx.rows, card)
        if recipe.code != card.code:
            raise BadInput(f"{file}: its code is '{recipe.code}', but this recipe is '{card.code}'.")
        if recipe_source(tx.rows, version_id) == text:
            raise Refused(f"{file} is the same as version {number} of {card.name}; nothing to book.")
        if recipe.process != before.process:
            raise Refused(
                f"{card.name} is made by the {before.process} process; another process is another recipe, "
                "so give the file a code of its own and add it."
            )
        materials_named(tx.rows, recipe, file=file)
        tx.add(RecipeVersion(recipe_id=card.id, number=number + 1, name=recipe.name, source=text))
        tx.say(f"Version {number + 1} of recipe {recipe.name} ({card.code}).")
    return RecipeAdded(card.code, number + 1, recipe, before)
