"""The lye against formulae, molar masses of a reference library, and published ranges."""

from fractions import Fraction

import molmass
import pytest

from ledger.domain.saponification import KOH, NAOH, AlkaliCharge, FatCharge, alkali_for, superfat_of
from ledger.errors import BadInput
from ledger.reference.tables import fats


def pure(formula: str) -> FatCharge:
    """A kilogram of a pure triglyceride; three KOH for each molecule, by molmass."""
    mass = molmass.Formula(formula).mass
    sap = round(3 * molmass.Formula("KOH").mass / mass * 1_000_000)
    return FatCharge(formula, 1_000_000, sap, sap)


def test_the_molar_masses_are_those_of_molmass() -> None:
    assert float(NAOH) == pytest.approx(molmass.Formula("NaOH").mass, rel=5e-5)
    assert float(KOH) == pytest.approx(molmass.Formula("KOH").mass, rel=5e-5)


@pytest.mark.parametrize(
    ("formula", "naoh_per_g"),
    # facts computed by hand: 3 x 39.997 / 885.453 (triolein) and 3 x 39.997 / 639.015 (trilaurin)
    [("C57H104O6", 0.13551), ("C39H74O6", 0.18777)],
)
def test_pure_triglycerides_take_three_alkalis_a_molecule(formula: str, naoh_per_g: float) -> None:
    need = alkali_for([pure(formula)], kind="NaOH", superfat_ppm=0)
    assert need.pure_mg / 1_000_000 == pytest.approx(naoh_per_g, abs=2e-5)


# Codex Alimentarius CXS 210-1999 Table 2 (saponification value, mg KOH/g); NaOH = value / 1000 x 39.997 / 56.105.
CODEX = {
    "coconut": (248, 265),
    "babassu": (245, 256),
    "palm": (190, 209),
    "sunflower": (187, 194),
    "sunflower high oleic": (182, 194),
    "rapeseed": (182, 193),
    "soya": (189, 195),
    "sesame": (186, 195),
    "rice bran": (180, 199),
    "cottonseed": (189, 198),
    "maize": (187, 195),
    "walnut": (189, 198),
}


@pytest.mark.parametrize("key", CODEX)
def test_the_alkali_for_a_fat_lies_in_the_middle_of_its_codex_range(key: str) -> None:
    fat, (low, high) = fats()[key], CODEX[key]
    assert (fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg) == (low * 1000, high * 1000)
    charge = FatCharge(key, 1_000_000, fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg)
    need = alkali_for([charge], kind="NaOH", superfat_ppm=0)
    assert need.pure_mg == pytest.approx((low + high) / 2 * 39.997 / 56.105 * 1000, abs=20)


def test_a_blend_worked_out_by_hand() -> None:
    # 700 g olive at 190, 250 g coconut at 256.5, 50 g castor at 179 mg KOH/g:
    # 133.000 + 64.125 + 8.950 = 206.075 g KOH; x 39.997 / 56.105 = 146.91 g NaOH; less 5 % = 139.56 g;
    # at a purity of 99 % 140.97 g are weighed.
    fats = [
        FatCharge("olive", 700_000, 184_000, 196_000),
        FatCharge("coconut", 250_000, 248_000, 265_000),
        FatCharge("castor", 50_000, 176_000, 182_000),
    ]
    need = alkali_for(fats, kind="NaOH", superfat_ppm=50_000, purity_ppm=990_000)
    assert need.demand_mg / 1000 == pytest.approx(146.91, abs=0.01)
    assert need.pure_mg / 1000 == pytest.approx(139.56, abs=0.01)
    assert need.weigh_mg / 1000 == pytest.approx(140.97, abs=0.01)
    assert superfat_of(fats, [AlkaliCharge("lye", "NaOH", need.weigh_mg, 990_000, 990_000)]) == pytest.approx(
        50_000, abs=10
    )


def test_potassium_takes_as_much_more_as_it_weighs_more() -> None:
    fats = [FatCharge("olive", 1_000_000, 190_000, 190_000)]
    assert alkali_for(fats, kind="KOH", superfat_ppm=0).pure_mg == 190_000
    assert Fraction(alkali_for(fats, kind="NaOH", superfat_ppm=0).pure_mg, 190_000) == pytest.approx(0.71289, abs=1e-4)


def test_a_purity_of_nothing_and_fats_that_take_no_alkali_are_refused() -> None:
    with pytest.raises(BadInput, match="purity"):
        alkali_for([pure("C57H104O6")], kind="NaOH", superfat_ppm=0, purity_ppm=0)
    with pytest.raises(BadInput, match="takes up alkali"):
        alkali_for([FatCharge("paraffin", 1000, 0, 0)], kind="NaOH", superfat_ppm=0)
