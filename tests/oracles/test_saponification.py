"""The lye against formulae, molar masses of a reference library, and published ranges."""

from fractions import Fraction

import molmass
import pytest

from ledger.domain.lye.composition import AlkaliIn, Charged, Composition, FatIn, reacted
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.saponification import KOH, NAOH, AlkaliCharge, FatCharge, alkali_for, superfat_of
from ledger.errors import BadInput
from ledger.reference.tables import acids, fats, fatty_acids
from ledger.units.quantity import WHOLE_PPM


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


def soap_of(sap_mg_per_kg: Fraction, kind: str, alkali_mg: int) -> Composition:
    """A kilogram of a triglyceride with so much pure alkali, no water."""
    fat = FatIn("fat", 1_000_000, sap_mg_per_kg)
    return reacted(Charged("cold", (fat,), (AlkaliIn(kind, alkali_mg, Fraction(WHOLE_PPM)),), ()))


@pytest.mark.parametrize(("kind", "per_g"), [("NaOH", 0.7675), ("KOH", 0.5471)])
def test_glycerol_is_set_free_by_every_third_alkali(kind: str, per_g: float) -> None:
    # Glycerol 3 x 12.011 + 8 x 1.008 + 3 x 15.999 = 92.094 g/mol, one for three alkalis:
    # 92.094 / (3 x 39.997) = 0.7675 g per g NaOH; 92.094 / (3 x 56.105) = 0.5471 g per g KOH. 100 g of alkali.
    assert soap_of(Fraction(190_000), kind, 100_000).of("glycerol") / 100_000 == pytest.approx(per_g, abs=6e-5)


# Worked out by hand from C 12.011, H 1.008, O 15.999, Na 22.98977, K 39.0983: the acid, its triglyceride, the value
# in mg KOH per g (168 316 / M), NaOH per g (119.990 / M), the sodium soap's M, glycerol per g (92.094 / M).
TRIGLYCERIDES = [
    ("C8H16O2", "C27H50O6", 357.6, 0.2549, 166.196, 0.1957),
    ("C10H20O2", "C33H62O6", 303.4, 0.2163, 194.250, 0.1660),
    ("C12H24O2", "C39H74O6", 263.4, 0.1878, 222.304, 0.1441),
    ("C14H28O2", "C45H86O6", 232.7, 0.1659, 250.358, 0.1273),
    ("C16H32O2", "C51H98O6", 208.5, 0.1486, 278.412, 0.1141),
    ("C18H36O2", "C57H110O6", 188.8, 0.1346, 306.466, 0.1033),
    ("C18H34O2", "C57H104O6", 190.1, 0.1355, 304.450, 0.1040),
    ("C18H32O2", "C57H98O6", 191.4, 0.1364, 302.434, 0.1047),
    ("C18H30O2", "C57H92O6", 192.7, 0.1374, 300.418, 0.1054),
    ("C18H34O3", "C57H104O9", 180.3, 0.1285, 320.449, 0.0987),
    ("C20H40O2", "C63H122O6", 172.5, 0.1230, 334.520, 0.0944),
    ("C22H44O2", "C69H134O6", 158.8, 0.1132, 362.574, 0.0869),
    ("C22H42O2", "C69H128O6", 159.7, 0.1139, 360.558, 0.0874),
]


@pytest.mark.parametrize(("acid", "fat", "value", "naoh", "soap", "glycerol"), TRIGLYCERIDES)
def test_a_pure_triglyceride_becomes_three_soaps_and_a_glycerol(
    acid: str, fat: str, value: float, naoh: float, soap: float, glycerol: float
) -> None:
    whole = molmass.Formula(fat).mass
    salt = molmass.Formula(acid).mass - molmass.Formula("H").mass + molmass.Formula("Na").mass
    assert salt == pytest.approx(soap, rel=3e-5)
    charge = pure(fat)
    assert charge.sap_low_mg_per_kg / 1000 == pytest.approx(value, abs=0.06)
    need = alkali_for([charge], kind="NaOH", superfat_ppm=0)
    assert need.pure_mg / 1_000_000 == pytest.approx(naoh, abs=6e-5)
    made = soap_of(charge.sap_mg_per_kg, "NaOH", need.pure_mg)
    assert made.of("soap") / 1_000_000 == pytest.approx(3 * salt / whole, abs=2e-5)
    assert made.of("glycerol") / 1_000_000 == pytest.approx(glycerol, abs=6e-5)


# g of NaOH and of KOH per g of acid = acid groups x M(alkali) / M(acid), worked out by hand:
# citric 3 x 39.997 / 192.123 and 3 x 56.105 / 192.123, and so on. The groups: citric has three, the others one.
@pytest.mark.parametrize(
    ("key", "groups", "naoh", "koh"),
    [
        ("citric acid", 3, 0.6245, 0.8761),
        ("citric acid monohydrate", 3, 0.5710, 0.8010),
        ("lactic acid", 1, 0.4440, 0.6228),
        ("acetic acid", 1, 0.6660, 0.9343),
    ],
)
def test_an_acid_uses_up_an_alkali_for_each_of_its_groups(key: str, groups: int, naoh: float, koh: float) -> None:
    acid, oil = acids()[key], [FatCharge("olive", 1_000_000, 190_000, 190_000)]
    mass = molmass.Formula(acid.formula).mass
    assert acid.koh_mg_per_kg / 1_000_000 == pytest.approx(groups * molmass.Formula("KOH").mass / mass, rel=5e-5)
    used = Figures(key, acid_koh_mg_per_kg=acid.koh_mg_per_kg).acid_koh_mg(100_000)
    for kind, per_g in (("NaOH", naoh), ("KOH", koh)):
        without = alkali_for(oil, kind=kind, superfat_ppm=50_000)
        with_it = alkali_for(oil, kind=kind, superfat_ppm=50_000, acids_koh_mg=used)
        assert (with_it.pure_mg - without.pure_mg) / 100_000 == pytest.approx(per_g, abs=7e-5)


def test_vinegar_of_five_percent_uses_up_three_grams_of_lye_in_a_hundred() -> None:
    # 5 g of acetic acid x 39.997 / 60.052 = 3.330 g NaOH, which is 3.330 x 56.1053 / 39.99677 = 4.671 g KOH.
    vinegar = Figures("vinegar", purity_low_ppm=50_000, acid_koh_mg_per_kg=acids()["acetic acid"].koh_mg_per_kg)
    assert float(vinegar.acid_koh_mg(100_000)) == pytest.approx(4671, abs=1)


@pytest.mark.parametrize(
    ("acid", "formula"),  # by its shorthand: so many carbons, and two hydrogens less for each double bond
    [(f"C{n}:{bonds}", f"C{n}H{2 * n - 2 * bonds}O2") for n, bonds in [
        (6, 0), (8, 0), (10, 0), (12, 0), (14, 0), (16, 0), (16, 1), (18, 0), (18, 1), (18, 2), (18, 3), (20, 0),
        (20, 1), (22, 0), (22, 1),
    ]] + [("C18:1-OH", "C18H34O3")],
)  # fmt: skip
def test_the_fatty_acids_weigh_what_molmass_says(acid: str, formula: str) -> None:
    # The atomic weights here are rounded to five figures; molmass's are not, and differ by about 2e-5.
    assert float(fatty_acids()[acid].molar_mass) == pytest.approx(molmass.Formula(formula).mass, rel=3e-5)


def test_every_fatty_acid_of_the_table_was_weighed() -> None:
    assert len(fatty_acids()) == 23
