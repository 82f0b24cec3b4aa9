"""Add a recipe, or its next version."""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from ledger.domain.recipe.formulate import targets
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.recipe.recipe import Portion, Recipe
from ledger.errors import BadInput, Refused
from ledger.rows.material import MaterialCard, material_list
from ledger.rows.recipe import recipe_by_code, recipe_cards, recipe_source
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.material import Material, MaterialRevision
from ledger.storage.tables.recipe import Recipe as RecipeRow
from ledger.storage.tables.recipe import RecipeVersion
from ledger.storage.transaction import Transaction
from ledger.storage.upgrade import kept_figures
from ledger.units.words import MaterialKind
from ledger.views.recipe.recipe import materials_named, recipe_version, recipe_versions, work_out


@dataclass(frozen=True)
class RecipeAdded:
    """A recipe version as it was booked."""

    code: str
    version: int
    recipe: Recipe


def add_recipe(book: Book, text: str, *, file: str) -> RecipeAdded:
    """Book a new recipe, and the soap it makes as a material of its own.

    Raises BadInput with file and place for what cannot be read, an unknown material or a code in use;
    Refused for fats that do not add up to 100 %. Whether its lye can be reckoned is asked at the plan: a figure of a
    material may come later.
    """
    recipe = read_recipe(text, file=file)
    with book.write("recipe add") as tx:
        if any(card.code == recipe.code for card in recipe_cards(tx.rows)):
            raise BadInput(
                f"{file}: there is a recipe '{recipe.code}' already; make its next version with: "
                f"soapledger recipe revise {recipe.code} {file}"
            )
        named = materials_named(tx.rows, recipe, file=file)
        _check_fats(recipe, named, file)
        with _of(file):
            targets(recipe)
        if recipe.yields:
            product = named[recipe.yields].id
            _check_yield(recipe, named, file)
        else:
            if any(card.code == recipe.code for card in material_list(tx.rows)):
                raise BadInput(f"{file}: a material is called '{recipe.code}' already; choose another code.")
            material = tx.add(Material(code=recipe.code, kind="soap"))
            assert material.id is not None
            tx.add(MaterialRevision(material_id=material.id, name=recipe.name))
            product = material.id
        row = tx.add(RecipeRow(code=recipe.code, material_id=product))
        assert row.id is not None
        add_portion_materials(tx, recipe, file=file)
        _add_version(tx, row.id, 1, recipe, text)
        tx.say(f"Added recipe {recipe.name} ({recipe.code}).")
    return RecipeAdded(recipe.code, 1, recipe)


@contextmanager
def _of(file: str) -> Iterator[None]:
    """What could not be shown once it is booked is refused before, with its file."""
    try:
        yield
    except (BadInput, Refused) as error:
        raise type(error)(f"{file}: {error}") from None


def _add_version(tx: Transaction, recipe_id: int, number: int, recipe: Recipe, text: str) -> None:
    """The text as she wrote it, and beside it what it was understood to say."""
    version = tx.add(RecipeVersion(recipe_id=recipe_id, number=number, name=recipe.name, source=text))
    assert version.id is not None
    tx.add(kept_figures(version.id, recipe))


def _check_fats(recipe: Recipe, named: Mapping[str, MaterialCard], file: str) -> None:
    """Raise BadInput for a fat that stands twice at one time, each time in other words."""
    words: dict[tuple[int, str], str] = {}
    for line in recipe.of_role("fat"):
        card = named[line.material]
        if before := words.get((card.id, line.stage)):
            raise BadInput(
                f"{file}: {card.name} stands twice under [[fat]], as '{before}' and '{line.material}'; write one "
                "[[fat]] for it, or another when for one of them."
            )
        words[card.id, line.stage] = line.material


def _check_yield(recipe: Recipe, named: Mapping[str, MaterialCard], file: str) -> None:
    """Raise BadInput for an infusion that gives no oil, or a blend that is neither a fat nor a stock lye."""
    assert recipe.yields
    card = named[recipe.yields]
    alkalis = [line for line in recipe.lines if named[line.material].kind == "alkali"]
    if recipe.process == "infusion" and card.kind not in ("fat", "intermediate"):
        raise BadInput(
            f"{file}: an infusion gives an oil (kind fat) or another intermediate; "
            f"{recipe.yields} is of the kind {card.kind}."
        )
    if recipe.process != "blend":
        return
    if not alkalis and card.kind not in ("fat", "intermediate"):
        raise BadInput(f"{file}: a blend of fats gives a fat or an intermediate; {card.name} is {card.kind}.")
    if alkalis and (not card.dissolved or any(named[one.material].alkali_kind != card.alkali_kind for one in alkalis)):
        raise BadInput(
            f"{file}: a stock lye is one alkali in water, and gives a material that is dissolved; add it with: "
            f'soapledger material add "stock lye" --alkali NaOH --strength 50'
        )
    if alkalis and any(named[one.material].kind not in ("alkali", "liquid") for one in recipe.of_role("part")):
        raise BadInput(f"{file}: a stock lye holds an alkali and water, nothing else.")


def revise_recipe(book: Book, code: str, text: str, *, file: str) -> RecipeAdded:
    """Book the next version of a recipe; batches keep the version they were planned from.

    Raises BadInput like `add_recipe`, Refused when nothing changed, or the process or what it gives would, and both for
    what cannot be worked out, since what changed is shown in grams.
    """
    recipe = read_recipe(text, file=file)
    with book.write("recipe revise") as tx:
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
        named = materials_named(tx.rows, recipe, file=file)
        _check_fats(recipe, named, file)
        with _of(file):
            work_out(recipe, number + 1, named, scale_step_mg=settings(tx.rows).scale_step_mg)
        if recipe.yields and before.yields:
            _check_yield(recipe, named, file)
            if named[recipe.yields].id != card.material_id:
                raise Refused(
                    f"{card.name} gives {before.yields}; what gives {recipe.yields} is another recipe, "
                    "so give the file a code of its own and add it."
                )
        add_portion_materials(tx, recipe, file=file, before=recipe_versions(tx.rows, card))
        _add_version(tx, card.id, number + 1, recipe, text)
        tx.say(f"Version {number + 1} of recipe {recipe.name} ({card.code}).")
    return RecipeAdded(card.code, number + 1, recipe)


def add_portion_materials(tx: Transaction, recipe: Recipe, *, file: str, before: Sequence[Recipe] = ()) -> None:
    """The dough of a recipe that divides, and the soap of each portion, as materials where they are not there yet.

    `before` are the earlier versions. Raises BadInput where something else has the code of one.
    """
    known = {card.code for card in material_list(tx.rows)}
    own = {code for one in before for code, _, _ in portion_materials(one)}
    for code, name, kind in portion_materials(recipe):
        if code not in known:
            material = tx.add(Material(code=code, kind=kind))
            assert material.id is not None
            tx.add(MaterialRevision(material_id=material.id, name=name))
        elif code not in own:
            raise BadInput(f"{file}: a material is called '{code}' already; give the portion another name.")


def portion_materials(recipe: Recipe) -> list[tuple[str, str, MaterialKind]]:
    """(code, name, kind) of the dough and of the soap of each portion."""
    if not recipe.portions:
        return []
    soaps: list[tuple[str, str, MaterialKind]] = [
        (soap_code(recipe.code, one), f"{recipe.name}, {one.name}", "soap") for one in recipe.portions
    ]
    return [(dough_code(recipe.code), f"{recipe.name}, dough", "intermediate"), *soaps]


def dough_code(recipe_code: str) -> str:
    """The short name of a recipe's dough."""
    return f"{recipe_code}-dough"


def soap_code(recipe_code: str, portion: Portion) -> str:
    """The short name of the soap of one portion."""
    return f"{recipe_code}-{portion.name}"
