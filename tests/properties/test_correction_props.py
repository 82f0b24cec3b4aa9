"""Whatever was weighed wrongly, the way out lands on the superfat that the recipe asks for."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from random_recipes import lines_of, recipes, superfat_ppm

from ledger.domain.bench.correction import FATS, LYE, Case, InPot, Way, ways
from ledger.views.recipe.recipe import RecipeSheet


def solved(sheet: RecipeSheet, lines: tuple[InPot, ...], wrong: InPot, way: str) -> Way:
    """The way out of that name, with any amount of fat free."""
    recipe = sheet.recipe
    case = Case(recipe.process, recipe.superfat_ppm or 0, lines, wrong.number, 100)
    return next(one for one in ways(case, {line.material: 10**12 for line in lines}) if one.name == way)


WRONG = st.integers(70, 140).filter(lambda percent: abs(percent - 100) > 2)


@given(sheet=recipes(), percent=WRONG, role=st.sampled_from(["fat", "alkali"]), made=st.booleans())
def test_less_or_more_lye_lands_on_the_superfat_asked_for(
    sheet: RecipeSheet, percent: int, role: str, made: bool
) -> None:
    lines = lines_of(sheet, logged=made or role == "alkali")
    wrong = next(one for one in lines if one.role == role)
    lines = tuple(replace(one, mass_mg=one.mass_mg * percent // 100) if one is wrong else one for one in lines)
    then = solved(sheet, lines, wrong, LYE).lines
    assert superfat_ppm(then) == pytest.approx(sheet.recipe.superfat_ppm, abs=3)
    if not made and role == "fat":
        return  # the alkali is weighed anew, into the same water
    soda, after = (sum(one.mass_mg for one in some if one.role == "alkali") for some in (lines, then))
    meant = sum(one.target_mg for one in lines if one.role == "alkali")
    for one, other in zip(lines, then, strict=True):
        if one.role in ("alkali", "liquid"):  # milk goes in with the lye too
            left = one.mass_mg * Fraction(after, soda)  # a share of the jug
            mixed = one.mass_mg + one.target_mg * Fraction(after - soda, meant)  # more lye, as strong as meant
            assert other.mass_mg == pytest.approx(float(left if after < soda else mixed), abs=5)
        else:
            assert other == one


@given(sheet=recipes(), percent=WRONG, role=st.sampled_from(["fat", "alkali"]))
def test_more_fat_lands_on_the_superfat_asked_for_or_would_only_raise_it(
    sheet: RecipeSheet, percent: int, role: str
) -> None:
    lines = lines_of(sheet)
    wrong = next(one for one in lines if one.role == role)
    lines = tuple(replace(one, mass_mg=one.mass_mg * percent // 100) if one is wrong else one for one in lines)
    found = solved(sheet, lines, wrong, FATS)
    if (percent < 100) == (role == "alkali"):
        assert found.why_not == "more fat would only raise the superfat further"
        return
    assert superfat_ppm(found.lines) == pytest.approx(sheet.recipe.superfat_ppm, abs=3)
    for one, then in zip(lines, found.lines, strict=True):
        assert then.mass_mg == one.mass_mg if one.role != "fat" else then.mass_mg >= one.mass_mg
