"""Three recipes worked out by hand, line by line, in grams, pounds and kilograms.

NaOH 39.99677 and KOH 56.1053 g/mol (IUPAC 2021 abridged weights), so NaOH takes 0.7128876 of what KOH does. A demand
is mass x saponification value / 1000, in KOH.
"""

import pytest
from recipes import fat, material, part, worked

from ledger.units.quantity import show_mass, show_share
from ledger.views.recipe.recipe import RecipeSheet

CARDS = (
    fat("olive", 190_000), fat("coconut", 257_000), fat("cocoa butter", 193_000),
    fat("rapeseed", 188_000), fat("palm kernel", 246_000), fat("castor", 180_000),
    material("soda", "alkali", alkali_kind="NaOH"),
    material("soda 99", "alkali", alkali_kind="NaOH", purity_ppm=990_000),
    material("potash 90", "alkali", alkali_kind="KOH", purity_ppm=900_000),
    material("citric", "additive", acid_koh_mg_per_kg=876_084, purity_ppm=1_000_000),  # 3 x 56.1053 / 192.123
    material("water", "liquid"), material("oat", "additive"), material("lavender", "fragrance"),
)  # fmt: skip


def lines_of(sheet: RecipeSheet) -> dict[str, int]:
    """Its lines in the order of work, in mg."""
    return {one.line.material: one.target for one in sheet.targets}


def test_cold_in_grams_with_lye_of_99_percent() -> None:
    sheet = worked(
        'water = {material = "water", per_alkali = 2.0}'
        + part("alkali", material="soda 99", kind="NaOH")
        + part("fat", material="olive", grams=500)
        + part("fat", material="coconut", grams=300)
        + part("fat", material="cocoa butter", grams=200)
        + part("additive", material="oat", percent_of_fats=1)
        + part("fragrance", material="lavender", percent_of_fats=3),
        *CARDS,
        process="cold",
        superfat=5,
    )
    lines = lines_of(sheet)
    # 500 x 0.190 = 95.000, 300 x 0.257 = 77.100, 200 x 0.193 = 38.600: 210.700 g KOH;
    # x 0.7128876 = 150.2054 g NaOH; less 5 % = 142.6951; / 0.99 = 144.1365 g; water 2 x 144.137 g.
    assert lines == {
        "olive": 500_000, "coconut": 300_000, "cocoa butter": 200_000, "water": 288_274, "soda 99": 144_137,
        "oat": 10_000, "lavender": 30_000,
    }  # fmt: skip
    assert list(lines)[3:5] == ["water", "soda 99"]  # alkali into water
    found = sheet.formulation
    assert found is not None
    (need,) = found.lye.alkalis
    assert (need.demand_mg, need.pure_mg) == (150_205, 142_695)
    # 0.498 mg more than asked for, x 0.99 / 0.7128876 / 210 700 = 3.3 millionths less than 5 %
    assert found.pot.superfat().nominal_ppm == 49_997
    assert found.pot.before_addition() is None
    assert found.lye.concentration_ppm == 333_333  # 1 / 3
    assert found.lye.water_per_alkali_thousandths == 2000
    assert found.lye.water_of_fats_ppm == 288_274  # of 1 000 000 mg of fats
    assert sum(lines.values()) == 1_472_411  # 1000 + 144.137 + 288.274 + 10 + 30 g of dough


def test_hot_in_pounds_with_castor_stirred_in_on_top_of_what_the_lye_counts() -> None:
    sheet = worked(
        'fats_total = "3 lb"\nwater = {material = "water", lye_concentration = 31}'
        + part("alkali", material="soda", kind="NaOH")
        + part("fat", material="rapeseed", percent=50)
        + part("fat", material="palm kernel", percent=38)
        + part("fat", material="castor", percent=12, when="after the cook", in_demand=False)
        + part("additive", material="oat", percent_of_fats=1.5, when="in the fats")
        + part("fragrance", material="lavender", percent_of_fats=2.5),
        *CARDS,
        process="hot",
        superfat=4,
    )
    lines = lines_of(sheet)
    # 48 oz: 24 oz x 0.188 = 4.5120, 18.24 x 0.246 = 4.4870: 8.9990 oz KOH; less 4 % = 8.6391; x 0.7128876 = 6.1587 oz
    # NaOH, reckoned as pure. Lye of 31 %: 6.1587 x 69 / 31 = 13.7081 oz water. Oat 0.72 oz, lavender 1.2 oz.
    shown = {name: show_mass(mass, "us") for name, mass in lines.items()}
    assert shown == {
        "rapeseed": "24.00 oz", "palm kernel": "18.24 oz", "oat": "0.72 oz", "water": "13.71 oz", "soda": "6.16 oz",
        "castor": "5.76 oz", "lavender": "1.20 oz",
    }  # fmt: skip
    assert list(shown)[-2:] == ["castor", "lavender"]  # after the cook
    # 3 lb = 1 360 777.11 mg; whole milligrams that add up: 680 389 + 517 095 + 163 293 (within half a mg each).
    # 680.389 x 0.188 + 517.095 x 0.246 = 255.11850 g KOH; x 0.96 x 0.7128876 = 174.596 g NaOH; x 69 / 31 = 388.617 g.
    assert lines == {
        "rapeseed": 680_389, "palm kernel": 517_095, "oat": 20_412, "water": 388_617, "soda": 174_596,
        "castor": 163_293, "lavender": 34_019,
    }  # fmt: skip
    found = sheet.formulation
    assert found is not None
    # in the bar the same lye stands against 163.293 x 0.180 = 29.393 g more: 1 - 244.9138 / 284.5112 = 13.92 %
    assert show_share(found.pot.superfat().nominal_ppm, 2) == "13.92 %"
    before = found.pot.before_addition()
    assert before is not None
    assert before.nominal_ppm == pytest.approx(40_000, abs=4)
    assert found.pot.lowest() == before
    assert show_share(found.lye.concentration_ppm, 2) == "31.00 %"
    assert found.lye.water_per_alkali_thousandths == 2226  # 69 / 31
    assert show_share(found.lye.water_of_fats_ppm, 2) == "28.56 %"  # 13.7081 / 48
    assert show_mass(sum(lines.values()), "us") == "69.79 oz"  # 48 + 13.7081 + 6.1587 + 0.72 + 1.2


def test_both_alkalis_in_kilograms_with_an_acid_that_gets_its_lye() -> None:
    sheet = worked(
        'fats_total = "5 kg"\nwater = {material = "water", lye_concentration = 30}'
        + part("alkali", material="soda", kind="NaOH", percent_of_demand=90)
        + part("alkali", material="potash 90", kind="KOH", percent_of_demand=10)
        + part("fat", material="olive", percent=70)
        + part("fat", material="coconut", percent=30)
        + part("additive", material="citric", percent_of_fats=2, add_alkali=True),
        *CARDS,
        process="cold",
        superfat=6,
    )
    lines = lines_of(sheet)
    # 3.5 kg x 0.190 = 665.0 g, 1.5 kg x 0.257 = 385.5 g: 1050.5 g KOH; less 6 % = 987.47 g.
    # Citric acid 100 g x 0.876084 = 87.6084 g KOH on top: 1075.0784 g.
    # NaOH 90 % x 0.7128876 = 689.769 g; KOH 10 % / 0.90 = 119.453 g. Lye of 30 %: 809.222 x 70 / 30 = 1888.185 g water.
    assert lines == {
        "olive": 3_500_000, "coconut": 1_500_000, "water": 1_888_185, "soda": 689_769, "potash 90": 119_453,
        "citric": 100_000,
    }  # fmt: skip
    found = sheet.formulation
    assert found is not None
    assert found.pot.superfat().nominal_ppm == pytest.approx(60_000, abs=1)
    soda, potash = found.lye.alkalis
    assert (soda.pure_mg, potash.pure_mg) == (689_769, 107_508)  # 1075.0784 x 10 % of KOH
    # mole for mole: 689.769 / 39.99677 = 17.2456 mol is nine times 107.508 / 56.1053 = 1.9162 mol
    assert soda.pure_mg / 39.99677 == pytest.approx(9 * potash.pure_mg / 56.1053, rel=1e-5)
    assert found.lye.concentration_ppm == 300_000
    assert found.lye.water_per_alkali_thousandths == 2333  # 70 / 30
    assert found.lye.water_of_fats_ppm == 377_637  # 1888.185 / 5000
    assert show_mass(sum(lines.values())) == "7\u00a0797.4 g"  # 5000 + 100 + 809.222 + 1888.185
    # Without lye for the acid 87.6084 g KOH fewer would reach the fats: 1 - (987.47 - 87.6084) / 1050.5 = 14.34 %.
    assert found.pot.acids_koh_mg == pytest.approx(87_608.4)
