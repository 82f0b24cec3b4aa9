"""The lye, its doubts and the mass balance hold for whatever recipe: each law reckoned again from the lines."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from random_recipes import KOH, MOLES, formulation, lines_of, recipes, superfat_ppm, total

from ledger.domain.lye.fatty_acids import profile_of
from ledger.domain.lye.uncertainty import superfat_range
from ledger.domain.recipe.formulate import targets
from ledger.reference.tables import fatty_acids, profiles
from ledger.views.recipe.composition import recipe_stages
from ledger.views.recipe.recipe import RecipeSheet

GLYCEROL, WATER = Fraction("92.094"), Fraction("18.015")  # g/mol


@given(sheet=recipes())
def test_the_superfat_worked_back_from_the_alkali_weighed_is_the_one_asked_for(sheet: RecipeSheet) -> None:
    lines, asked = lines_of(sheet), sheet.recipe.superfat_ppm
    assert superfat_ppm(lines) == pytest.approx(asked, abs=2)
    if all(one.in_demand or one.role not in ("fat", "additive") for one in lines):
        assert formulation(sheet).pot.superfat().nominal_ppm == pytest.approx(asked, abs=2)


@given(sheet=recipes())
def test_no_milligram_comes_or_goes_but_as_water(sheet: RecipeSheet) -> None:
    lines, found = lines_of(sheet), recipe_stages(sheet)
    assert found is not None
    whole = sum(one.mass_mg for one in lines)
    assert found.before.mass_mg == whole
    dry = [soap.mass_mg - soap.of("water") for soap in (found.cut, found.cured, found.driest)]
    assert dry[0] == dry[1] == dry[2]
    assert all(one.mass_mg > 0 for one in (*found.before.parts, *found.cut.parts, *found.driest.parts))
    # Acids first (a water for each alkali), then the fats in the pot, then those held back from a cook.
    acids, left = total(lines, "additive"), total(lines, "alkali") - total(lines, "additive")
    water = found.before.of("water") + acids * WATER / KOH
    lost = water / 10 if sheet.recipe.process == "hot" else 0  # the cook takes a tenth of the water
    assert found.cut.of("water") == pytest.approx(float(water - lost), abs=2)
    assert found.cut.mass_mg == pytest.approx(whole - float(lost), abs=2)
    used = min(left, total(lines, "fat"))
    assert found.cut.of("glycerol") == pytest.approx(float(used / KOH * GLYCEROL / 3), abs=2)
    over = sum(one.mass_mg * KOH / MOLES[one.name] for one in found.cut.parts if one.what == "alkali left over")
    assert float(over) == pytest.approx(float(left - used), abs=4)


@given(sheet=recipes())
def test_likely_low_is_never_above_the_superfat_as_reckoned(sheet: RecipeSheet) -> None:
    found = formulation(sheet).pot.superfat()
    assert found.likely_low_ppm <= found.nominal_ppm
    assert found.all_low_ppm <= found.nominal_ppm


@given(sheet=recipes(acids=False))
def test_all_low_is_never_above_likely_low(sheet: RecipeSheet) -> None:
    pot = formulation(sheet).pot
    for found in (pot.superfat(), pot.lowest()):
        assert found.all_low_ppm <= found.likely_low_ppm


@given(sheet=recipes(), which=st.integers(0, 7), wider=st.integers(1, 30_000))
def test_a_range_wider_on_both_sides_never_raises_likely_low(sheet: RecipeSheet, which: int, wider: int) -> None:
    pot = formulation(sheet).pot
    fats = [*pot.fats, *pot.held]
    one = fats[which % len(fats)]
    wide = one._replace(
        sap_low_mg_per_kg=one.sap_low_mg_per_kg - wider, sap_high_mg_per_kg=one.sap_high_mg_per_kg + wider
    )
    now, then = (
        superfat_range(some, pot.alkalis, scale_step_mg=100, acids_koh_mg=pot.acids_koh_mg)
        for some in (fats, [wide if fat is one else fat for fat in fats])
    )
    assert then.nominal_ppm == now.nominal_ppm
    assert then.likely_low_ppm <= now.likely_low_ppm
    assert then.all_low_ppm <= now.all_low_ppm


@given(sheet=recipes(), times=st.integers(2, 40))
def test_a_recipe_made_larger_and_small_again_is_the_same_to_a_milligram(sheet: RecipeSheet, times: int) -> None:
    own = sheet.recipe.fats_total_mg or 0
    size = min(own * times, 100_000_000)
    assume(size > own)
    large = targets(sheet.recipe, fats_total_mg=size)
    grown = {one.line: one.line._replace(mass_mg=one.target, share_ppm=None) for one in large}
    lines = tuple(grown.get(line, line) for line in sheet.recipe.lines)
    back = targets(sheet.recipe._replace(lines=lines, fats_total_mg=size), fats_total_mg=own)
    for was, now in zip(targets(sheet.recipe), back, strict=True):
        assert abs(was.target - now.target) <= 1


@given(parts=st.lists(st.tuples(st.integers(1, 10**7), st.sampled_from(sorted(profiles()))), min_size=1, max_size=8))
def test_a_merged_profile_stays_between_the_profiles_it_merges(parts: list[tuple[int, str]]) -> None:
    merged = profile_of([(mass, profiles()[key]) for mass, key in parts], fatty_acids())
    assert merged
    for line in merged:
        ranges = [{one.acid: one for one in profiles()[key]}.get(line.acid) for _, key in parts]
        lows, highs = [one.low_ppm if one else 0 for one in ranges], [one.high_ppm if one else 0 for one in ranges]
        assert 0 <= min(lows) <= line.low_ppm <= line.high_ppm <= max(highs) <= 1_000_000
    assert sum(line.low_ppm for line in merged) <= 1_000_000
