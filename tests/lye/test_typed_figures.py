"""One figure typed for a material speaks of a kind of goods; only a lot's own is held to be a certificate's."""

from fractions import Fraction

import pytest
from recipes import fat, material

from ledger.domain.lye.pot import Figures, open_acids, typed_spread
from ledger.domain.lye.saponification import AlkaliCharge
from ledger.domain.lye.uncertainty import superfat_range
from ledger.views.material.figures import figures_of

PURE = AlkaliCharge("soda", "NaOH", 1, 1_000_000, 1_000_000)
CERTIFIED = Figures("castor oil", 179_000, 179_000, sap_of="lot L3-6: certificate")


def typed(low: int, high: int | None = None, like: str | None = None) -> Figures:
    """A fat of which that was typed for the material, in mg KOH per kg."""
    return figures_of(fat("shea", low, high)._replace(reference_key=like))


def reach(figures: Figures) -> tuple[int, int]:
    charge = figures.fat(1_000_000)
    return charge.sap_low_mg_per_kg, charge.sap_high_mg_per_kg


def test_one_value_for_a_material_leaves_three_percent_open_and_the_middle_where_it_was() -> None:
    olive = figures_of(fat("olive oil", 189_000))  # 3 % of 189 is 5.67
    assert reach(olive) == (183_330, 194_670)
    assert olive.fat(1).sap_mg_per_kg == 189_000
    assert olive.stated() == "olive oil: 189 typed for the material, taken as 183.3 to 194.7"
    assert typed_spread(33) == 1  # 0.99, rounded up


def test_a_range_keeps_its_own_ends_and_says_nothing_more() -> None:
    assert reach(typed(175_000, 185_000)) == (175_000, 185_000)
    assert typed(175_000, 185_000).stated() is None
    assert reach(typed(180_000, 180_000)) == (174_600, 185_400)  # 180-180 is one value


# Published for shea: 160 to 195 (CXS 325R-2017). Within it, both ends counted, one typed value reaches to its foot.
@pytest.mark.parametrize(
    ("value", "low"),
    [
        (159_999, 155_199),  # outside: 3 % is 4.79997, rounded up to 4.8
        (160_000, 155_200),  # at the foot: 3 % is more
        (164_948, 159_999),  # 3 % is 4.94844, rounded up to 4.949: a grain under the foot
        (164_949, 160_000),  # 3 % is 4.94847, rounded up to 4.949: the foot
        (165_000, 160_000),  # 3 % is 4.95; the foot lies lower
        (180_000, 160_000),
        (195_000, 160_000),
        (195_001, 189_150),  # outside: 3 % is 5.85003, rounded up to 5.851
    ],
)
def test_a_value_within_the_published_range_it_started_from_reaches_down_to_its_foot(value: int, low: int) -> None:
    assert reach(typed(value, like="shea"))[0] == low
    assert typed(value, like="shea").fat(1).sap_mg_per_kg == value


def test_a_lots_own_certificate_is_held_to_one_milligram() -> None:
    assert reach(CERTIFIED) == (179_000, 179_000)
    assert CERTIFIED.stated() == "castor oil, lot L3-6: certificate 179 ± 1"
    # 1 of 179 is 0.559 %: 1 - 0.95 x 1.00559 = 4.47 %; the same typed for the material 3 %: 1 - 0.95 x 1.03 = 2.15 %
    lye = PURE._replace(mass_mg=121_228)  # 1000 g x 0.179 x 39.99677 / 56.1053 x 0.95
    for figures, low in ((CERTIFIED, 44_690), (typed(179_000), 21_500)):
        found = superfat_range([figures.fat(1_000_000)], [lye], scale_step_mg=0)
        assert found.likely_low_ppm == pytest.approx(low, abs=15)


# 600 g of shea at 180 and 400 g of certified olive at 190 take 184 g KOH. Shea 0.6 x 5.4 / 184 = 1.761 %, olive
# 0.4 x 1 / 184 = 0.217 %, together 1.774 %: likely low 1 - 0.95 x 1.01774 = 3.31 %. By its foot of 160 shea leaves
# 0.6 x 20 / 184 = 6.522 %, together 6.525 %: 1 - 0.95 x 1.06525 = -1.20 %.
@pytest.mark.parametrize(("like", "low"), [(None, 33_147), ("shea", -11_990)])
def test_sixty_percent_of_shea_from_a_web_page(like: str | None, low: int) -> None:
    fats = [typed(180_000, like=like).fat(600_000), Figures("olive", 190_000, 190_000).fat(400_000)]
    found = superfat_range(fats, [PURE._replace(mass_mg=124_613)], scale_step_mg=0)  # 184 x 0.71289 x 0.95
    assert found.nominal_ppm == pytest.approx(50_000, abs=10)
    assert found.likely_low_ppm == pytest.approx(low, abs=20)


@pytest.mark.parametrize(
    ("kind", "purity", "water", "top"),
    [
        ("KOH", 900_000, None, 927_000),
        ("NaOH", 990_000, None, 1_000_000),  # 3 % would be more than pure
        ("NaOH", 1_000_000, None, 1_000_000),
        ("NaOH", 500_000, 500_000, 515_000),  # a stock lye
    ],
)
def test_a_purity_or_strength_typed_for_the_material(kind: str, purity: int, water: int | None, top: int) -> None:
    figures = figures_of(material("lye", "alkali", alkali_kind=kind, purity_ppm=purity, water_ppm=water))
    assert figures.alkali(1).purity_high_ppm == top
    assert figures.alkali(1).purity_ppm == purity
    own = figures._replace(purity_open_ppm=0, purity_of="lot L4-4: certificate")
    assert own.alkali(1).purity_high_ppm == purity
    assert own.stated() == f"lye, lot L4-4: certificate {purity / 10_000:g} % ± 0.5"


def test_an_acid_may_be_weaker_than_its_figure_for_the_material() -> None:
    # 100 g of lactic acid at 80 % for the material, 0.622852 g KOH per g: 3 % of 80 is 2.4 %, or 1.4948 g KOH
    lactic = figures_of(material("lactic", "additive", acid_koh_mg_per_kg=622_852, purity_ppm=800_000))
    assert lactic.stated() == "lactic: 80 % for the material, taken as down to 77.6 %"
    ((name, less),) = open_acids([(lactic, 100_000), (CERTIFIED, 1_000_000)])
    assert (name, round(less)) == ("lactic", 1495)
    # fats of 200 g KOH and lye worth 240 g, 50 of it for the acid: 5 %; without 1.4948 g of that 1 - 191.4948 / 200
    lye = PURE._replace(mass_mg=171_093)  # 240 x 39.99677 / 56.1053
    only = Figures("fat", 199_000, 201_000).fat(1_000_000)
    found = superfat_range([only], [lye], scale_step_mg=0, acids_koh_mg=Fraction(50_000), acids_open=((name, less),))
    # the fat's own 0.5 % of 190 g is 0.95 g; the root of 0.95 and 1.4948 squared is 1.7711: 1 - 191.7711 / 200
    assert found.likely_low_ppm == pytest.approx(41_144, abs=20)
