"""The fats that fill a mould, make so many bars or use up a drum, by hand and by the rule of thumb for loaves."""

import pytest

from ledger.domain.recipe.formulate import targets
from ledger.domain.recipe.mould import parse_mould
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.recipe.scaling import Dough, bars_of, fats_for_bars, fats_for_stock, fats_for_volume
from ledger.errors import BadInput

# 70 cubic inches, 1147.1 mL, which about 800 g of fats fill: common practice, no source.
LOAF = parse_mould("8 x 2.5 x 3.5 in").volume_ul


def dough(fats_g: float, ratio: float) -> Dough:
    """Dough of an ordinary blend, 190 mg KOH per g at 5 %: 0.12868 g NaOH per g of fats, water ratio : 1 to it."""
    alkali = fats_g * 0.12868
    return Dough(round(fats_g * 1000), round(alkali * 1000), round(alkali * ratio * 1000), 0)


def test_the_rule_of_thumb_fills_a_loaf_to_nineteen_twentieths() -> None:
    # Common practice, no source: 0.40 oz of fats per cubic inch at water about 2 : 1. 70 x 0.40 = 28 oz = 793.8 g of
    # fats, 1100.2 g of dough; at about 1.03 g per mL (common practice, no source) 1068 mL, 93 % of 1147 mL.
    rule = dough(28 * 28.349523125, 2)
    assert rule.mass_mg / 1000 == pytest.approx(1100.2, abs=0.5)
    assert rule.mass_mg / rule.volume_ul() == pytest.approx(1.03, abs=0.01)
    assert rule.volume_ul() / LOAF == pytest.approx(0.94, abs=0.015)
    # at 800 g, as it is rounded, likewise
    assert dough(800, 2).volume_ul() / LOAF == pytest.approx(0.94, abs=0.015)


def test_the_same_fats_with_water_three_to_one_overflow_the_loaf() -> None:
    # 800 g fats, 102.9 g NaOH, 308.8 g water: one more NaOH-weight of water is 103 mL more than at 2 : 1.
    assert dough(800, 3).volume_ul() > LOAF
    assert dough(800, 3).volume_ul() - dough(800, 2).volume_ul() == pytest.approx(102_944, abs=2)


def test_the_fats_that_fill_a_mould_fill_it() -> None:
    # By hand from the parts: 100 g fats / 0.942 = 106.157 mL, 13 g alkali x 0.21 = 2.73, 26 g water, 5 g clay: 139.887.
    small = Dough(100_000, 13_000, 26_000, 5_000)
    assert small.mass_mg == 144_000
    assert small.volume_ul() == pytest.approx(139_887, abs=1)
    assert fats_for_volume(small, 2 * 139_887) == pytest.approx(200_000, abs=2)
    # her own batches gave 0.96 g per mL: 144 g are 150 mL, so 1.5 L takes a kilogram of fats
    assert small.volume_ul(960) == 150_000
    assert fats_for_volume(small, 1_500_000, density_mg_per_ml=960) == 1_000_000


def test_the_fats_for_so_many_bars_count_what_dries_away() -> None:
    # 1000 g of fats make 1386 g of dough, which cures to 1254 g: 12 bars of 95 g are 1140 g, so 909.1 g of fats.
    found = fats_for_bars(dough(1000, 2), 1_254_000, bars=12, net_weight_mg=95_000)
    assert found == pytest.approx(909_091, abs=1)  # 1 140 000 / 1254
    for bars, weight in ((0, 95_000), (-1, 95_000), (12, 0)):
        with pytest.raises(BadInput, match="How many bars"):
            fats_for_bars(dough(1000, 2), 1_254_000, bars=bars, net_weight_mg=weight)


def test_what_is_left_of_one_fat_sets_the_size_and_is_never_exceeded() -> None:
    # 300 of 1000 g are coconut and 750 g of it are free: 2500 g of fats. 100 g of a third: 333.333 g, rounded down.
    assert fats_for_stock(1_000_000, 300_000, 750_000) == 2_500_000
    assert fats_for_stock(1_000_000, 300_000, 100_000) == 333_333
    assert fats_for_stock(1_000_000, 300_000, 0) == 0


def test_bars_of_a_size_have_the_volume_of_so_many() -> None:
    assert bars_of(parse_mould("8 x 5.5 x 2.5 cm"), 9) == 990_000  # 110 mL each
    for bars in (0, -3):
        with pytest.raises(BadInput, match="How many bars"):
            bars_of(parse_mould("90 mL"), bars)


RECIPE = """name = "b"
code = "b"
process = "cold"
superfat = 5
fats_total = "1000 g"
alkali = {material = "soda", kind = "NaOH"}
water = {material = "water", per_alkali = 2}
mould = {bars = 10}
fat = [{material = "olive", percent = 66.6}, {material = "coconut", percent = 33.4}]
additive = [{material = "clay", percent_of_fats = 1.5}]
fragrance = [{material = "lavender", grams = 25}]
packaging = [{material = "band", per_bar = 2}]
"""


def test_everything_scales_with_the_fats() -> None:
    # 750 g of 1000 g: 499.5 + 250.5 g of fats, 11.25 g of clay, 18.75 g of lavender; 7.5 bars are 8, with 16 bands.
    recipe = read_recipe(RECIPE, file="b.toml")
    assert {one.line.material: one.target for one in targets(recipe, fats_total_mg=750_000)} == {
        "olive": 499_500, "coconut": 250_500, "clay": 11_250, "lavender": 18_750, "band": 16,
    }  # fmt: skip


@pytest.mark.parametrize(("fats_mg", "fits"), [(9_999, False), (10_000, True), (10**8, True), (10**8 + 1, False)])
def test_a_batch_lies_between_ten_grams_and_a_hundred_kilograms(fats_mg: int, fits: bool) -> None:
    recipe = read_recipe(RECIPE, file="b.toml")
    if fits:
        assert sum(one.target for one in targets(recipe, fats_total_mg=fats_mg) if one.line.role == "fat") == fats_mg
        return
    with pytest.raises(BadInput, match="between 10 g and 100 kg"):
        targets(recipe, fats_total_mg=fats_mg)
