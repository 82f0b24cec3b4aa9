"""The versions of a recipe, worked out in grams."""

from collections.abc import Mapping
from typing import NamedTuple

from ledger.domain.material.roles import check_role
from ledger.domain.recipe.formulate import Charge, Formulation, Target, formulate, targets
from ledger.domain.recipe.recipe import WITH_THE_LYE, Recipe, RecipeLine
from ledger.errors import BadInput
from ledger.rows.material import MaterialCard, material_list
from ledger.rows.opened import Rows
from ledger.rows.recipe import RecipeCard, kept_versions
from ledger.rows.settings import settings
from ledger.units.names import named
from ledger.units.words import Process
from ledger.views.material.figures import figures_of


def recipe_version(rows: Rows, card: RecipeCard, number: int | None = None) -> tuple[int, int, Recipe]:
    """(row number, version number, recipe) of one version, the latest unless told. Raises BadInput."""
    wanted = card.version if number is None else number
    versions = kept_versions(rows, card.id)
    if wanted not in versions:
        raise BadInput(f"{card.name} has no version {wanted}; its latest is {card.version}.")
    version_id, recipe = versions[wanted]
    return version_id, wanted, recipe


def recipe_versions(rows: Rows, card: RecipeCard) -> tuple[Recipe, ...]:
    """Every version of a recipe, the first first."""
    return tuple(recipe for _, recipe in kept_versions(rows, card.id).values())


def materials_named(rows: Rows, recipe: Recipe, *, file: str) -> dict[str, MaterialCard]:
    """Every material the recipe names, by the words it uses.

    Raises BadInput naming file and material for one that is not known, that stands where its kind
    does not belong, or twice in the same words.
    """
    cards = material_list(rows)
    found = {}
    for word in [line.material for line in recipe.lines] + ([recipe.yields] if recipe.yields else []):
        try:
            found[word] = named(word, cards, noun="material", add=f'soapledger material add "{word}" --kind KIND')
        except BadInput as error:
            raise BadInput(f"{file}: {error}") from None
    for place, line in enumerate(recipe.lines):
        if line in recipe.lines[:place]:  # amounts go by line, and the second would not be reckoned with
            raise BadInput(
                f"{file}: {line.material} stands twice under [[{line.role}]], word for word; write it once, with all "
                "of it."
            )
        _check_line(line, found[line.material], recipe.process, file)
    return found


def order_of_work(recipe: Recipe, named: Mapping[str, MaterialCard]) -> tuple[RecipeLine, ...]:
    """The lines in the order of work: liquids and acids of the lye are in the jug before the alkali goes into them.

    An acid onto lye spits, and alkali in too little water does not dissolve (common practice, no source).
    """
    jug = [line for line in recipe.lines if line.stage == WITH_THE_LYE]

    def place(line: RecipeLine) -> int:
        card = named[line.material]
        if line.role == "alkali":
            return 1
        return 0 if card.kind == "liquid" or card.acid_koh_mg_per_kg is not None else 2

    made = iter(sorted(jug, key=place))
    return tuple(next(made) if line.stage == WITH_THE_LYE else line for line in recipe.lines)


def _check_line(line: RecipeLine, card: MaterialCard, process: Process, file: str) -> None:
    """Raise BadInput for a material where it does not belong, or an acid of which the lye is not told."""
    check_role("blend" if process == "blend" and line.role == "part" else line.role, card.kind, card.name, where=file)
    if line.role == "alkali" and card.alkali_kind != line.kind:
        raise BadInput(
            f"{file}: the recipe reckons with {line.kind}, but {card.name} is {card.alkali_kind}; "
            "mend the recipe or the material."
        )
    if card.acid_koh_mg_per_kg is not None and line.role == "additive" and line.add_alkali is None:
        raise BadInput(
            f"{file}: {card.name} uses up alkali; write add_alkali = true to add alkali for it, or "
            "add_alkali = false to let the superfat rise."
        )
    if card.acid_koh_mg_per_kg is None and line.add_alkali is not None:
        raise BadInput(f"{file}: {card.name} is no acid, so no alkali is added for it; take add_alkali out.")


class RecipeSheet(NamedTuple):
    """A version worked out in grams, with the figures of the materials (a batch uses those of its lots)."""

    recipe: Recipe
    version: int
    targets: tuple[Target, ...]  # every line, in the order of work
    formulation: Formulation | None  # None where no soap is made of fats and lye
    materials: dict[str, MaterialCard]

    @property
    def fats_mg(self) -> int:
        """All the fats."""
        return sum(one.target for one in self.targets if one.line.role == "fat")


def recipe_sheet(
    rows: Rows, card: RecipeCard, *, version: int | None = None, fats_mg: int | None = None, bars: int | None = None
) -> RecipeSheet:
    """Work out one version, at its own size or for so much fat, and the wrapping for so many bars."""
    _, number, recipe = recipe_version(rows, card, version)
    named = materials_named(rows, recipe, file=f"recipe {card.code}")
    return work_out(recipe, number, named, scale_step_mg=settings(rows).scale_step_mg, fats_mg=fats_mg, bars=bars)


def work_out(
    recipe: Recipe,
    number: int,
    named: dict[str, MaterialCard],
    *,
    scale_step_mg: int,
    fats_mg: int | None = None,
    bars: int | None = None,
) -> RecipeSheet:
    """A recipe in grams from its materials. Raises BadInput for a figure the lye needs and has not."""
    fixed = {one.line: one.target for one in targets(recipe, fats_total_mg=fats_mg, bars=bars)}
    formulation = None
    if recipe.soap:
        formulation = formulate(
            recipe,
            [
                Charge(line, mass, figures_of(named[line.material]))
                for line, mass in fixed.items()
                if line.role != "packaging"
            ],
            alkalis={line.kind: figures_of(named[line.material]) for line in recipe.of_role("alkali") if line.kind},
            fill=figures_of(named[next(line.material for line in recipe.lines if line.fills_up)]),
            scale_step_mg=scale_step_mg,
        )
        needs = {need.kind: need.weigh_mg for need in formulation.lye.alkalis}
        for line in recipe.lines:
            if line.fills_up:
                fixed[line] = formulation.lye.fill_mg
            elif line.kind:
                fixed[line] = needs[line.kind]
    found = tuple(Target(line, fixed[line]) for line in order_of_work(recipe, named))
    return RecipeSheet(recipe, number, found, formulation, named)
