"""What the lye makes of the fats and what dries away, against mass balances worked out by hand.

Molar masses in g/mol from C 12.011, H 1.008, O 15.999, Na 22.98977, K 39.0983: NaOH 39.997, KOH 56.105, water 18.015,
glycerol 92.094.
"""

from fractions import Fraction

import pytest

from ledger.domain.lye.composition import (
    AlkaliIn,
    Charged,
    Composition,
    FatIn,
    OtherIn,
    dried_to,
    reacted,
    without_water,
)
from ledger.errors import BadInput

PURE = Fraction(1_000_000)


def water(grams: float) -> OtherIn:
    """So much water with the lye."""
    return OtherIn("water", "liquid", round(grams * 1000), Fraction(round(grams * 1000)))


def fat(name: str, grams: float, value: float, **more: str | bool) -> FatIn:
    """So much of a fat with a saponification value in mg KOH per g."""
    return FatIn(name, round(grams * 1000), Fraction(round(value * 1000)), **more)  # type: ignore[arg-type]


def soda(grams: float, purity: int = 1_000_000) -> AlkaliIn:
    """So much NaOH as sold."""
    return AlkaliIn("NaOH", round(grams * 1000), Fraction(purity))


def grams(soap: Composition, what: str) -> float:
    """How much of one kind of thing is in it."""
    return soap.of(what) / 1000


# 1000 g of fats at 190 mg KOH per g and 5 % superfat: 1000 x 0.190 x 39.997 / 56.105 x 0.95 = 128.68 g NaOH.
# At 2 : 1 257.36 g of water in 1386.04 g of dough, 18.57 %. Its dry part, 1128.68 g, is 90 % of 1254.09 g: 131.95 g or
# 9.52 % is lost. It is 92 % of 1226.83 g: 159.21 g or 11.49 % lost. At 3 : 1 386.04 g of water in 1514.72 g, 25.49 %;
# 1514.72 - 1254.09 = 260.63 g or 17.21 % lost.
@pytest.mark.parametrize(
    ("ratio", "dough", "share", "left", "lost"),
    [(2, 1386.04, 18.57, 10, 9.52), (2, 1386.04, 18.57, 8, 11.49), (3, 1514.72, 25.49, 10, 17.21)],
)
def test_a_loaf_dries_by_what_it_holds_above_its_last_water(
    ratio: int, dough: float, share: float, left: int, lost: float
) -> None:
    fresh = reacted(Charged("cold", (fat("olive", 1000, 190),), (soda(128.68),), (water(128.68 * ratio),)))
    assert fresh.mass_mg / 1000 == pytest.approx(dough, abs=0.01)
    assert 100 * fresh.of("water") / fresh.mass_mg == pytest.approx(share, abs=0.01)
    dry = dried_to(fresh, left * 10_000, stage="cured")
    assert 100 * (1 - dry.mass_mg / fresh.mass_mg) == pytest.approx(lost, abs=0.01)
    assert round(1e6 * dry.of("water") / dry.mass_mg) == left * 10_000
    for what in ("soap", "glycerol", "fat"):
        assert dry.of(what) == fresh.of(what)
    # 1000 g x 5 % of the fat is left; glycerol 128.68 x 92.094 / (3 x 39.997) = 98.77 g; soap is the rest,
    # 950 + 128.68 - 98.77 = 979.91 g.
    assert grams(fresh, "fat") == pytest.approx(50, abs=0.03)
    assert grams(fresh, "glycerol") == pytest.approx(98.77, abs=0.01)
    assert grams(fresh, "soap") == pytest.approx(979.91, abs=0.05)


def test_what_is_drier_already_stays_and_no_more_water_goes_than_there_is() -> None:
    fresh = reacted(Charged("cold", (fat("olive", 1000, 190),), (soda(128.68),), (water(100),)))
    assert dried_to(fresh, 100_000, stage="cured").mass_mg == fresh.mass_mg  # 100 of 1228.68 g is 8.1 %
    assert without_water(fresh, 100_000, stage="cut").of("water") == 0
    with pytest.raises(BadInput, match="More water is gone"):
        without_water(fresh, 100_001, stage="cut")


def test_an_acid_takes_its_alkali_first_and_sets_water_free() -> None:
    # 10 g citric acid (192.123) takes 10 x 3 x 39.997 / 192.123 = 6.245 g NaOH and gives 3 x 18.015 x 10 / 192.123 =
    # 2.813 g of water and 10 + 6.245 - 2.813 = 13.432 g trisodium citrate (258.07 x 10 / 192.123 = 13.433).
    # 128.68 + 6.245 g NaOH leave the fats what they had: 5 % is left.
    acid = OtherIn("citric acid", "additive", 10_000, acid_koh_mg=Fraction(10_000) * 3 * 56_105 / 192_123)
    fresh = reacted(Charged("cold", (fat("olive", 1000, 190),), (soda(134.925),), (water(257.36), acid)))
    assert grams(fresh, "salt") == pytest.approx(13.433, abs=0.003)
    assert grams(fresh, "water") == pytest.approx(257.36 + 2.813, abs=0.003)
    assert grams(fresh, "fat") == pytest.approx(50, abs=0.05)
    # without alkali for it the acid takes 6.245 of 128.68 g, and 5 + 95 x 6.245 / 128.68 = 9.61 % of the fat is left
    short = reacted(Charged("cold", (fat("olive", 1000, 190),), (soda(128.68),), (water(257.36), acid)))
    assert grams(short, "fat") == pytest.approx(96.1, abs=0.1)


def test_a_wax_gives_soap_and_no_glycerol() -> None:
    # 100 g at 95.5 mg KOH per g takes 9.55 x 39.997 / 56.105 = 6.808 g NaOH; the alcohol counts with the soap.
    fresh = reacted(Charged("cold", (fat("beeswax", 100, 95.5, ester="wax"),), (soda(6.808),), (water(20),)))
    assert grams(fresh, "glycerol") == 0
    assert grams(fresh, "soap") == pytest.approx(106.808, abs=0.01)
    assert grams(fresh, "water") == 20


def test_a_free_acid_gives_soap_and_water() -> None:
    # Stearic acid 284.484, 56.1053 / 284.484 = 197.22 mg KOH per g: 100 g and 14.059 g NaOH give
    # 100 x 306.466 / 284.484 = 107.727 g of sodium stearate and 18.015 x 100 / 284.484 = 6.332 g of water.
    fresh = reacted(Charged("hot", (fat("stearic", 100, 197.22, ester="acid"),), (soda(14.060),), (water(30),)))
    assert grams(fresh, "soap") == pytest.approx(107.727, abs=0.01)
    assert grams(fresh, "water") == pytest.approx(36.332, abs=0.005)
    assert grams(fresh, "glycerol") == 0


# 900 g olive at 190 takes 171 g KOH or 121.90 g NaOH; 115 g NaOH, or 161.32 g KOH, leaves 5.66 % of it in hot process,
# 50.95 g, and the 100 g of shea at 180 whole. In cold process all take 171 + 18 = 189 g KOH: 14.648 % of each is left.
@pytest.mark.parametrize(("process", "olive", "shea"), [("hot", 50.95, 100), ("cold", 131.83, 14.65)])
def test_a_fat_held_back_stays_in_hot_process_and_shares_in_cold(process: str, olive: float, shea: float) -> None:
    both = (fat("olive", 900, 190), fat("shea", 100, 180, held_back=True))
    fresh = reacted(Charged(process, both, (soda(115),), (water(240),)))
    left = {one.name: one.mass_mg / 1000 for one in fresh.parts if one.what == "fat"}
    assert left == pytest.approx({"olive": olive, "shea": shea}, abs=0.03)
    assert fresh.mass_mg == 1_355_000


def test_lye_left_in_a_cooked_pot_takes_the_fat_held_back() -> None:
    # 130 g NaOH is 182.36 g KOH: 171 saponifies all the olive, 11.36 of the shea's 18 g: 36.9 g of shea is left.
    both = (fat("olive", 900, 190), fat("shea", 100, 180, held_back=True))
    fresh = reacted(Charged("hot", both, (soda(130),), (water(270),)))
    assert {one.name: one.mass_mg / 1000 for one in fresh.parts if one.what == "fat"} == pytest.approx(
        {"shea": 36.9}, abs=0.05
    )
    assert grams(fresh, "alkali left over") == 0


def test_too_much_lye_is_left_over_as_such() -> None:
    # 1000 g at 190 takes 135.45 g NaOH; 140 g of 99 % holds 138.6: 3.15 g is left, and 1.4 g was something else.
    fresh = reacted(Charged("cold", (fat("olive", 1000, 190),), (soda(140, 990_000),), (water(280),)))
    assert grams(fresh, "alkali left over") == pytest.approx(3.15, abs=0.01)
    assert grams(fresh, "rest of the alkali") == pytest.approx(1.4, abs=0.001)
    assert grams(fresh, "fat") == 0


def test_two_alkalis_share_the_fat_mole_for_mole() -> None:
    # Triolein (885.453, 190.1 mg KOH per g) half by each: 500 g gives 500 x 3 x 304.450 / 885.453 = 515.75 g of sodium
    # oleate and 500 x 3 x 320.559 / 885.453 = 543.04 g of potassium oleate (KOH 95.05 g, NaOH 67.76 g).
    alkalis = (soda(67.76), AlkaliIn("KOH", 95_050, PURE))
    fresh = reacted(Charged("cold", (fat("triolein", 1000, 190.1),), alkalis, (water(300),)))
    soaps = {one.name.split()[0]: one.mass_mg / 1000 for one in fresh.parts if one.what == "soap"}
    assert soaps == pytest.approx({"sodium": 515.75, "potassium": 543.04}, abs=0.1)
