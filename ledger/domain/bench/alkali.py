"""What to weigh of the alkalis once the fats are weighed."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ledger.domain.lye.weighed import Weighed
from ledger.domain.recipe.formulate import Charge, alkali_need
from ledger.domain.recipe.recipe import Recipe, RecipeLine
from ledger.units.words import Stage


class AlkaliWanted(NamedTuple):
    """One alkali on the worksheet, and what the fats as weighed take at the recipe's superfat; in mg."""

    material: str
    planned_mg: int
    wanted_mg: int


def wanted(
    recipe: Recipe, weighed: Sequence[Weighed], still: Sequence[Weighed], counted: Mapping[tuple[int, Stage], bool]
) -> tuple[AlkaliWanted, ...]:
    """What to weigh of each alkali that is `still` open, with what else is, at its target; nothing before the fats.

    A fat or an acid that goes in later counts with its target. `counted` says of a material at its time whether the
    lye is reckoned for it.
    """
    if any(one.role == "fat" and not one.held_back for one in still):
        return ()
    charges = _charges((*weighed, *still), counted)
    if not any(one.line.role == "fat" for one in charges):
        return ()
    found = []
    for kind in recipe.alkali_shares_ppm:
        mine = [one for one in still if one.role == "alkali" and one.figures.alkali_kind == kind]
        if mine:
            purest = max((one.figures for one in mine), key=lambda one: one.alkali(0).purity_ppm)  # as planned
            need = alkali_need(recipe, charges, purest)
            found.append(AlkaliWanted(mine[0].figures.name, sum(one.mass_mg for one in mine), need.weigh_mg))
    return tuple(found)


def _charges(meant: Sequence[Weighed], counted: Mapping[tuple[int, Stage], bool]) -> list[Charge]:
    """The fats and acids as a recipe has them."""
    found = []
    for one in meant:
        if one.role in ("fat", "additive"):
            own = counted.get((one.material_id, one.stage), True)
            line = RecipeLine(one.role, one.figures.name, one.stage, in_demand=own, add_alkali=own)
            found.append(Charge(line, one.mass_mg, one.figures))
    return found
