"""The mass balance, where lots, acids and spreads come together."""

from fractions import Fraction

from ledger.domain.lye.composition import AlkaliIn, Charged, FatIn, OtherIn, reacted
from ledger.domain.lye.saponification import AlkaliCharge, FatCharge, alkali_for
from ledger.domain.lye.uncertainty import superfat_range

PURE = Fraction(1_000_000)
FAT = FatIn("olive oil", 1_000_000, Fraction(190_000))
WATER = OtherIn("water", "liquid", 257_000, Fraction(257_000))


def test_an_alkali_weighed_from_two_lots_makes_the_same_soap_as_from_one() -> None:
    one = reacted(Charged("cold", (FAT,), (AlkaliIn("NaOH", 128_680, PURE),), (WATER,)))
    two = reacted(Charged("cold", (FAT,), (AlkaliIn("NaOH", 64_340, PURE), AlkaliIn("NaOH", 64_340, PURE)), (WATER,)))
    assert two == one
    # 190 g KOH = 135.449 g NaOH takes up all; 128.68 g leaves 1 - 128.68 / 135.449 = 4.998 % of 1000 g
    assert abs(one.of("fat") - 49_980) <= 20


def test_the_water_of_vinegar_dries_away_and_is_no_salt() -> None:
    # 200 g of vinegar at 5 %: 10 g acetic acid; 56.1053 / 60.052 x 10 = 9.343 g KOH = 6.660 g NaOH.
    # Salt: 10 + 6.660 - 18.015 / 60.052 x 10 (water set free, 3.000) = 13.660 g.
    acid = OtherIn("vinegar", "additive", 200_000, Fraction(190_000), Fraction("9342.8"))
    soap = reacted(Charged("cold", (FAT,), (AlkaliIn("NaOH", 135_340, PURE),), (WATER, acid)))
    assert abs(soap.of("salt") - 13_660) <= 10
    assert abs(soap.of("water") - (257_000 + 190_000 + 3_000)) <= 10


def test_all_low_is_never_above_likely_low_with_an_acid_in_the_lye() -> None:
    # 30 g of citric acid uses up 26.283 g KOH; that alkali says nothing of the fats
    fats, acid = [FatCharge("olive oil", 1_000_000, 184_000, 196_000)], Fraction(26_283)
    need = alkali_for(fats, kind="NaOH", superfat_ppm=50_000, acids_koh_mg=acid)
    lye = [AlkaliCharge("lye", "NaOH", need.weigh_mg, 1_000_000, 1_000_000)]
    found = superfat_range(fats, lye, scale_step_mg=100, acids_koh_mg=acid)
    # one fat alone, +-6 of 190: 5 % - 0.95 x 6 / 190 = 2.00 %; the scale's 0.1 g moves it by under 0.1 %
    assert 19_000 <= found.likely_low_ppm <= 20_000
    assert found.all_low_ppm <= found.likely_low_ppm <= found.nominal_ppm
