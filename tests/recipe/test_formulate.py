"""The water of the lye by each rule, with milk and stock lye in it, and what the lye refuses; worked out by hand.

1000 g of olive at 190 mg KOH per g and 5 % take 180.5 g KOH, x 0.7128876 = 128.676 g NaOH.
"""

import pytest
from recipes import bar_file, fat, material, part, worked

from ledger.domain.recipe.formulate import targets, tolerance
from ledger.domain.recipe.reader import read_recipe
from ledger.errors import BadInput, Refused
from ledger.rows.material import MaterialCard
from ledger.units.scale import Scale
from ledger.views.recipe.recipe import RecipeSheet

SODA = material("soda", "alkali", alkali_kind="NaOH")
MILK = material("milk", "liquid", water_ppm=870_000)


def olive_soap(water: str, *more: str, cards: tuple[MaterialCard, ...] = (), soda: MaterialCard = SODA) -> RecipeSheet:
    """A kilogram of olive oil with one alkali and the water by some rule."""
    text = f'water = {{material = "water", {water}}}' + part("fat", material="olive", grams=1000)
    text += part("alkali", material=soda.name, kind=soda.alkali_kind) + "".join(more)
    return worked(text, fat("olive", 190_000), material("water", "liquid"), soda, *cards, process="cold")


def grams(sheet: RecipeSheet) -> dict[str, float]:
    """Its lines."""
    return {one.line.material: one.target / 1000 for one in sheet.targets}


@pytest.mark.parametrize(
    ("rule", "water"),
    [
        ("per_alkali = 2.5", 321.690),  # 128.676 x 2.5
        ("lye_concentration = 35", 238.970),  # 128.676 x 65 / 35
        ("of_fats = 38", 380),
        ("per_alkali = 1", 128.676),
    ],
)
def test_the_water_follows_its_rule(rule: str, water: float) -> None:
    assert grams(olive_soap(rule)) == pytest.approx({"olive": 1000, "water": water, "soda": 128.676}, abs=0.002)


def test_milk_stands_for_the_water_it_holds() -> None:
    # 200 g of milk at 87 % bring 174 g of 257.352 g: 83.352 g are left to fill up
    sheet = olive_soap("per_alkali = 2", part("liquid", material="milk", grams=200), cards=(MILK,))
    assert grams(sheet)["water"] == pytest.approx(83.352, abs=0.002)
    assert sheet.formulation is not None
    assert sheet.formulation.lye.water_mg == pytest.approx(257_352, abs=2)


def test_a_stock_lye_brings_its_own_water() -> None:
    # Half and half: 128.676 g of NaOH are 257.352 g of stock lye with 128.676 g of water; 2 : 1 takes as much again.
    stock = material("stock lye", "alkali", alkali_kind="NaOH", purity_ppm=500_000, water_ppm=500_000)
    sheet = olive_soap("per_alkali = 2", soda=stock)
    assert grams(sheet) == pytest.approx({"olive": 1000, "water": 128.676, "stock lye": 257.352}, abs=0.002)
    assert sheet.formulation is not None
    assert sheet.formulation.lye.concentration_ppm == pytest.approx(333_333, abs=2)


def test_less_water_than_alkali_is_refused_however_it_comes_about() -> None:
    with pytest.raises(Refused, match="less water than its own weight"):
        olive_soap("of_fats = 12")  # 120 g for 128.676 g
    olive_soap("of_fats = 12.9")  # 129 g
    # 257.352 g of water, of which 150 g of milk at trace bring 130.5: 126.852 g are with the lye
    late = part("liquid", material="milk", grams=150, when="at trace")
    with pytest.raises(Refused, match="less water than its own weight"):
        olive_soap("per_alkali = 2", late, cards=(MILK,))


def test_more_milk_than_the_water_allows_is_refused_with_how_much() -> None:
    # 350 g of milk bring 304.5 g; 257.352 g are asked for: 47 g too much
    with pytest.raises(Refused, match="bring 47 g more water than the recipe asks for"):
        olive_soap("per_alkali = 2", part("liquid", material="milk", grams=350), cards=(MILK,))


def test_what_the_lye_cannot_be_reckoned_without_is_asked_for() -> None:
    with pytest.raises(BadInput, match=r"potash needs its purity.*--purity 90"):
        olive_soap("per_alkali = 2", soda=material("potash", "alkali", alkali_kind="KOH"))
    with pytest.raises(BadInput, match=r"jasmine wax has no saponification value.*--sap 188-192"):
        olive_soap(
            "per_alkali = 2", part("fat", material="jasmine wax", grams=5), cards=(material("jasmine wax", "fat"),)
        )


def test_the_fats_of_a_batch_lie_between_ten_grams_and_a_hundred_kilograms() -> None:
    recipe = read_recipe(bar_file("By hand", "by-hand", {"olive": 60, "coconut": 40}), file="by-hand.toml")
    for total, olive in ((10_000, 6_000), (100_000_000, 60_000_000)):
        found = {one.line.material: one.target for one in targets(recipe, fats_total_mg=total)}
        assert found["olive"] == olive
    for total in (9_999, 100_000_001):
        with pytest.raises(BadInput, match="between 10 g and 100 kg"):
            targets(recipe, fats_total_mg=total)


@pytest.mark.parametrize(
    ("role", "low", "high"),
    [
        ("fat", 198_000, 202_000),  # 1 % of 200 g
        ("liquid", 198_000, 202_000),
        ("alkali", 199_000, 200_100),  # 0.5 % below, and one step of the scale above
        ("additive", 190_000, 210_000),  # 5 %
        ("packaging", 200_000, 200_000),
    ],
)
def test_how_far_a_weight_may_lie_from_its_target(role: str, low: int, high: int) -> None:
    assert tolerance(role, 200_000) == (low, high)


def test_no_window_is_narrower_than_the_scale_shows() -> None:
    assert tolerance("fat", 9_999) == (9_900, 10_000)  # 9.899 to 10.099 g, of which a scale of 0.1 g reads these
    assert tolerance("fat", 50) == (0, 100)


@pytest.mark.parametrize(
    ("target", "scale", "window"),
    [
        (127_960, Scale(), (127_400, 128_000)),  # 127.321 to 128.06 g: 128.1 g would be beyond, so it is not shown
        (128_049, Scale(), (127_500, 128_100)),  # 127.409 to 128.149 g
        (127_960, Scale(10), (127_400, 128_000)),  # to 127.97 g; the target is shown as 128 g, and that is inside
        (127_960, Scale(1000), (127_000, 128_000)),  # 126.96 to 128.96 g, of which a scale of 1 g reads these
        (127_960, Scale(100, "us"), (127_573, 127_856)),  # 4.4911 to 4.5172 oz, shown as 4.50 to 4.51 oz
    ],
)
def test_a_weight_that_reads_as_the_end_of_its_window_is_inside(
    target: int, scale: Scale, window: tuple[int, int]
) -> None:
    assert tolerance("alkali", target, scale=scale) == window
