"""What a recipe's dough and a batch as weighed are made of, before the cook, at the cut and after the cure."""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.lye.composition import (
    COOK_LOSS_PPM,
    AlkaliIn,
    Charged,
    Composition,
    FatIn,
    OtherIn,
    as_weighed,
    dried_to,
    reacted,
    without_water,
)
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.weighed import Weighed
from ledger.domain.recipe.recipe import DRIEST_WATER_PPM, WATER_LEFT_PPM, Recipe
from ledger.reference.tables import fats
from ledger.rows.batch import BatchRow
from ledger.rows.material import MaterialCard, materials_by_id
from ledger.rows.opened import Rows
from ledger.rows.reading import cooked_off
from ledger.rows.recipe import recipe_of
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import Process, UsedAs
from ledger.views.lye.lye_check import meant_in, weighed_in
from ledger.views.recipe.recipe import RecipeSheet


class Stages(NamedTuple):
    """The same soap at each stage, with how its drying was reckoned."""

    before: Composition
    cut: Composition
    cured: Composition
    driest: Composition
    cook_loss: str  # where the water lost in the cook is known from


class Input(NamedTuple):
    """So much of one thing that went in."""

    role: UsedAs
    card: MaterialCard
    figures: Figures
    mass_mg: int
    held_back: bool


def charged(process: Process, inputs: Iterable[Input]) -> Charged:
    """What went in, as the mass balance takes it."""
    found_fats, alkalis, others = [], [], []
    for one in inputs:
        figures, mass = one.figures, one.mass_mg
        if one.role == "fat":
            fat = figures.fat(mass, process)
            found_fats.append(FatIn(one.card.name, mass, fat.sap_mg_per_kg, ester_of(one.card), one.held_back))
        elif one.role == "alkali":
            alkali = figures.alkali(mass)
            pure = mass * alkali.purity_ppm / WHOLE_PPM
            water = figures.water_mg(mass) if figures.water_ppm is not None else Fraction(0)
            if alkali.kind == "KOH" and figures.water_ppm is None:
                water = mass - pure  # what flakes hold besides is water
            alkalis.append(AlkaliIn(alkali.kind, mass, alkali.purity_ppm, water))
        elif one.role != "packaging":
            wet = one.card.kind == "liquid" or figures.acid_koh_mg_per_kg is not None
            water = figures.water_mg(mass) if wet else Fraction(0)
            others.append(OtherIn(one.card.name, one.role, mass, water, figures.acid_koh_mg(mass)))
    return Charged(process, tuple(found_fats), tuple(alkalis), tuple(others))


def ester_of(card: MaterialCard) -> str:
    """What a fat is an ester of, from the published fat it is like; a glyceride where nothing is known."""
    fat = fats().get(card.reference_key or "")
    return fat.ester if fat else "glyceride"


def recipe_stages(sheet: RecipeSheet) -> Stages | None:
    """A recipe's soap at each stage; None where no soap is made of fats and lye."""
    if sheet.formulation is None:
        return None
    alkalis = sheet.formulation.alkalis
    fixed = {charge.line: charge.figures for charge in sheet.formulation.charges}
    inputs = []
    for target in sheet.targets:
        line = target.line
        card = sheet.materials[line.material]
        figures = alkalis[line.kind] if line.kind else fixed.get(line, sheet.formulation.fill)
        if line.role != "packaging":
            inputs.append(Input(line.role, card, figures, target.target, line.after_cook))
    return stages(charged(sheet.recipe.process, inputs), sheet.recipe, lost_mg=None)


def batch_stages(rows: Rows, batch: BatchRow, *, meant: bool = False) -> Stages | None:
    """A batch's soap at each stage, as weighed; None before fats and alkali are in.

    `meant` counts what is still open at its target.
    """
    found = meant_in(rows, batch.id) if meant else weighed_in(rows, batch.id)
    cards = materials_by_id(rows, {one.material_id for one in found})
    return stages_of(batch.process, found, cards, recipe_of(rows, batch), lost_mg=cooked_off(rows, batch.id))


def stages_of(
    process: Process,
    found: Sequence[Weighed],
    cards: Mapping[int, MaterialCard],
    recipe: Recipe | None,
    *,
    lost_mg: int | None,
) -> Stages | None:
    """Likewise, of what was read already."""
    if not {"fat", "alkali"} <= {one.role for one in found}:
        return None
    inputs = [
        Input(
            one.role,
            cards[one.material_id],
            one.figures,
            one.mass_mg,
            one.after_cook,
        )
        for one in found
    ]
    return stages(charged(process, inputs), recipe, lost_mg=lost_mg)


def stages(put_in: Charged, recipe: Recipe | None, *, lost_mg: int | None) -> Stages:
    """The stages of what went in; the cook's loss as weighed, or else estimated for hot process."""
    fresh = reacted(put_in)
    if lost_mg is not None:
        loss, words = lost_mg, "by weighing the pot"
    elif put_in.process == "hot":
        loss = round(Fraction(fresh.of("water") * COOK_LOSS_PPM, WHOLE_PPM))
        words = f"estimated as {COOK_LOSS_PPM / 10_000:g} % of the water (common practice, no source)"
    else:
        loss, words = 0, "none: it is not cooked"
    cut = without_water(fresh, min(loss, fresh.of("water")), stage="at the cut")
    left = recipe.water_left_ppm if recipe else WATER_LEFT_PPM
    driest = recipe.driest_water_ppm if recipe else DRIEST_WATER_PPM
    return Stages(
        as_weighed(put_in),
        cut,
        dried_to(cut, left, stage="after the cure"),
        dried_to(cut, driest, stage="at its driest"),
        words,
    )
