"""Likely low and all low against figures worked out by hand and against fifty thousand rolls of the dice.

Likely low lies one combined half-range below the superfat as reckoned: the root of the sum of the squares of the
half-ranges. What share of lots lies below it depends on how they spread within their ranges.

*Normal, sigma = half-range.* The sum of normal errors is normal, and its sigma is that same root, so likely low is one
sigma down: 15.87 % of runs lie below (the normal table).

*Uniform within the range.* A half-range h has sigma h / sqrt 3, so likely low is sqrt 3 = 1.732 sigmas down. With three
equal half-ranges the sum is an Irwin-Hall one: P(below) = (3 - 1.732)^3 / 48 = 4.25 %; many equal ones approach the
normal table's 4.16 %; fewer give less. One half-range e alone: the reckoning takes a value short by the share u to
raise the alkali's share by u, where it rises by u / (1 - u); that reaches e at u = e / (1 + e), so
(e - e / (1 + e)) / 2e = e / (2 (1 + e)) of the lots lie below.

That curve, u / (1 - u) for u, moves the other shares by less than one point for half-ranges of a few percent.
"""

import random
from collections.abc import Callable

import pytest

from ledger.domain.bench.superfat import likely_low_refusal
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.saponification import AlkaliCharge, FatCharge
from ledger.domain.lye.uncertainty import superfat_range
from ledger.domain.recipe.formulate import Charge, Formulation, formulate
from ledger.domain.recipe.reader import read_recipe
from ledger.reference.tables import fats

RUNS = 50_000
# Three things that leave the same open: 1500 g of each fat at 200 +- 8 mg KOH per g is 12 of 600 g of the demand, 2 %;
# NaOH of 96 +- 1.92 % is 2 % of itself.
TWO_FATS = [
    FatCharge("one", 1_500_000, 192_000, 208_000),
    FatCharge("other", 1_500_000, 192_000, 208_000),
]
# 95 % of 600 g of KOH, in NaOH of 96 %: 570 x 39.99677 / 56.1053 / 0.96
LYE = AlkaliCharge("soda", "NaOH", 423_277, 940_800, 979_200)


def share_below(spread: Callable[[random.Random], float], fats: list[FatCharge], lye: AlkaliCharge) -> float:
    """The share of runs, in percent, whose superfat lies below likely low; each fat and the lye spread apart."""
    likely = superfat_range(fats, [lye], scale_step_mg=0).likely_low_ppm / 1e6
    dice, below = random.Random(1), 0
    middle, half = (lye.purity_high_ppm + lye.purity_low_ppm) / 2e6, (lye.purity_high_ppm - lye.purity_low_ppm) / 2e6
    for _ in range(RUNS):
        demand = 0.0
        for fat in fats:
            low, high = fat.sap_low_mg_per_kg / 1e6, fat.sap_high_mg_per_kg / 1e6
            demand += fat.mass_mg * ((low + high) / 2 + spread(dice) * (high - low) / 2)
        worth = lye.mass_mg * (middle + spread(dice) * half) * 56.1053 / 39.99677
        below += 1 - worth / demand < likely
    return 100 * below / RUNS


def test_one_normal_lot_in_six_lies_below_and_one_uniform_lot_in_twenty_four() -> None:
    # root 3 x 2 % = 3.464 %, of 95 % is 3.291 %: likely low is 5 - 3.291 = 1.709 %
    found = superfat_range(TWO_FATS, [LYE], scale_step_mg=0)
    assert found.likely_low_ppm / 10_000 == pytest.approx(1.709, abs=0.002)
    assert share_below(lambda dice: dice.gauss(0, 1), TWO_FATS, LYE) == pytest.approx(15.87, abs=1)
    assert share_below(lambda dice: dice.uniform(-1, 1), TWO_FATS, LYE) == pytest.approx(4.25, abs=1)


def test_of_one_uniform_fat_alone_only_the_very_end_lies_below() -> None:
    # e = 8 / 200 = 4 %: 4 / (2 x 1.04) = 1.92 %. NaOH reckoned as pure leaves nothing open.
    pure = AlkaliCharge("soda", "NaOH", 406_346, 1_000_000, 1_000_000)
    alone = [FatCharge("one", 3_000_000, 192_000, 208_000)]
    assert share_below(lambda dice: dice.uniform(-1, 1), alone, pure) == pytest.approx(1.92, abs=0.4)


def test_two_lots_of_one_fat_err_together() -> None:
    # Without certificates of their own both follow one range: 4 + 4 of 100 g, not the root of the squares.
    together = [FatCharge("one", 1_500_000, 192_000, 208_000)] * 2
    pure = AlkaliCharge("soda", "NaOH", 406_346, 1_000_000, 1_000_000)
    found = superfat_range(together, [pure], scale_step_mg=0)
    assert found.likely_low_ppm / 10_000 == pytest.approx(5 - 0.95 * 4, abs=0.002)  # 1.2 %
    apart = superfat_range(TWO_FATS, [pure], scale_step_mg=0)
    assert apart.likely_low_ppm / 10_000 == pytest.approx(5 - 0.95 * 2 * 2**0.5, abs=0.002)  # 2.313 %


# At 5 % reckoned on the middle of its published range, and one fat alone at the foot of it, the superfat is
# 1 - 0.95 x middle / foot (worked out by hand): palm 1 - 0.95 x 199.5 / 190 = 0.25 %, and so on.
@pytest.mark.parametrize(
    ("key", "percent"),
    [
        ("palm", 0.25),
        ("palm kernel", 0.04),
        ("rice bran", -0.01),
        ("avocado", 1.66),
        ("almond", 2.98),
        ("beeswax", -4.28),
        ("shea", -5.39),
    ],
)
def test_all_low_is_every_fat_at_the_foot_of_its_range(key: str, percent: float) -> None:
    fat = fats()[key]
    charge = FatCharge(key, 1_000_000_000, fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg)
    lye = round(float(charge.demand_koh_mg) * 0.95 * 39.99677 / 56.1053)
    found = superfat_range([charge], [AlkaliCharge("soda", "NaOH", lye, 1_000_000, 1_000_000)], scale_step_mg=0)
    assert found.all_low_ppm / 10_000 == pytest.approx(percent, abs=0.006)


def blend(**percent: float) -> Formulation:
    """A kilogram of published fats at 5 %, with NaOH that has no certificate, weighed to 0.1 g."""
    parts = "".join(f"\n[[fat]]\nmaterial = '{name.replace('_', ' ')}'\npercent = {n}" for name, n in percent.items())
    recipe = read_recipe(
        'name = "b"\ncode = "b"\nprocess = "cold"\nsuperfat = 5\nfats_total = "1000 g"\n'
        'alkali = {material = "soda", kind = "NaOH"}\nwater = {material = "water", per_alkali = 2}' + parts,
        file="b.toml",
    )
    charges = []
    for line in recipe.of_role("fat"):
        fat = fats()[line.material]
        figures = Figures(fat.name, fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg)
        charges.append(Charge(line, line.share_ppm or 0, figures))  # ppm of a kilogram are mg
    soda = {"NaOH": Figures("soda", alkali_kind="NaOH")}
    return formulate(recipe, charges, alkalis=soda, fill=Figures("water"), scale_step_mg=100)


def test_an_ordinary_blend_at_five_percent_is_not_refused() -> None:
    # KOH 133.0 + 64.125 + 8.95 = 206.075 g. Half-ranges 700 x 6 = 4.2 g, 250 x 8.5 = 2.125 g, 50 x 3 = 0.15 g: root
    # of the squares 4.709 g = 2.285 %. The scale, 0.1 of 139.6 g of lye, is 0.072 %. Together 2.287 x 0.95 = 2.172 %.
    found = blend(olive=70, coconut=25, castor=5)
    assert found.pot.lowest().likely_low_ppm / 10_000 == pytest.approx(2.83, abs=0.005)
    assert likely_low_refusal(found, "Blend") is None


def test_much_unrefined_shea_at_five_percent_is_refused() -> None:
    # KOH 106.5 + 64.125 + 28.95 = 199.575 g. Half-ranges 600 x 17.5 = 10.5 g, 2.125 g, 150 x 5 = 0.75 g: root of the
    # squares 10.739 g = 5.381 %; x 0.95 = 5.112 % (the scale adds 0.001), more than the 5 % there are.
    found = blend(shea=60, coconut=25, cocoa_butter=15)
    assert found.pot.lowest().likely_low_ppm / 10_000 == pytest.approx(-0.11, abs=0.005)
    refusal = likely_low_refusal(found, "Blend")
    assert refusal is not None
    assert "5.00 %" in refusal
    assert "−0.11 %" in refusal
    # at 5.5 % it is 5.5 - 0.945 x 5.381 = 0.41 %; with the shea's certificate the root is that of 0.6, 2.125 and 0.75
    assert "superfat = 5.5" in refusal
    assert "certificate of the lot of shea" in refusal
