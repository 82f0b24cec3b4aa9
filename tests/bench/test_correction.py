"""A wrong weight before lye and fats have met: what each way out comes to, worked out by hand.

The batch: 700 g olive at 190.0 and 300 g coconut at 257.0 mg KOH per g take 133.0 + 77.1 = 210.1 g KOH; at 5 % that is
199.595 g KOH, x 0.7128876 = 142.289 g NaOH (reckoned as pure), in 284.578 g of water.
"""

from dataclasses import replace

import pytest

from ledger.domain.bench.correction import FATS, LYE, POUR, Case, InPot, Way, ways, what_it_means
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.uncertainty import Superfat

OLIVE, COCONUT, WATER, SODA = 1, 2, 3, 4
PLENTY = {"olive": 10**9, "coconut": 10**9}


def line(number: int, role: str, material: str, mass: int, *, logged: bool = True, **figures: int | str) -> InPot:
    """One line, at its target."""
    stage = "in the fats" if role == "fat" else "with the lye"
    return InPot(number, role, material, stage, True, mass, mass, logged, Figures(material, **figures))  # type: ignore[arg-type]


def batch(wrong: int, mass: int, *, lye_made: bool = True, more: tuple[InPot, ...] = ()) -> Case:
    """The batch with one line as it really is."""
    lines = (
        line(OLIVE, "fat", "olive", 700_000, sap_low_mg_per_kg=190_000, sap_high_mg_per_kg=190_000),
        line(COCONUT, "fat", "coconut", 300_000, sap_low_mg_per_kg=257_000, sap_high_mg_per_kg=257_000),
        line(WATER, "liquid", "water", 284_578, logged=lye_made),
        line(SODA, "alkali", "soda", 142_289, logged=lye_made, alkali_kind="NaOH"),
        *more,
    )
    real = tuple(replace(one, mass_mg=mass) if one.number == wrong else one for one in lines)
    return Case("cold", 50_000, real, wrong, 100)


def changes(case: Case, way: Way) -> dict[str, float]:
    """Grams more or less by material."""
    assert way.why_not is None
    return {one.material: mass / 1000 for one, mass in way.changes(case.lines)}


def superfat(way: Way) -> float:
    """In percent."""
    assert way.superfat is not None
    return way.superfat.nominal_ppm / 10_000


def test_too_much_alkali_in_the_jug() -> None:
    case = batch(SODA, 160_000)
    pour, lye, fats = ways(case, PLENTY)
    assert (pour.name, lye.name, fats.name) == (POUR, LYE, FATS)
    # 160 g NaOH is 224.439 g KOH: 1 - 224.439 / 210.1 = -6.82 %
    assert superfat(pour) == pytest.approx(-6.82, abs=0.01)
    assert (pour.burns, pour.why_not) == (True, "lye is left over and the bars would burn: do not pour it")
    # leave 1 - 142.289 / 160 = 11.069 % of the solution in the jug: 17.711 g of NaOH and 31.501 g of water
    assert changes(case, lye) == pytest.approx({"soda": -17.711, "water": -31.501}, abs=0.002)
    assert superfat(lye) == pytest.approx(5, abs=0.001)
    # or 160 / 142.289 = 1.124472 of all the fats: 87.130 g of olive and 37.342 g of coconut more
    assert changes(case, fats) == pytest.approx({"olive": 87.130, "coconut": 37.342}, abs=0.003)
    assert superfat(fats) == pytest.approx(5, abs=0.001)


def test_too_little_alkali_in_the_jug() -> None:
    case = batch(SODA, 130_000)
    pour, lye, fats = ways(case, PLENTY)
    # 130 g NaOH is 182.357 g KOH: 1 - 182.357 / 210.1 = 13.20 %
    assert superfat(pour) == pytest.approx(13.20, abs=0.01)
    # mix the missing 12.289 g of NaOH at the strength meant, in 2 x 12.289 = 24.578 g of water
    assert changes(case, lye) == pytest.approx({"soda": 12.289, "water": 24.578}, abs=0.002)
    assert superfat(lye) == pytest.approx(5, abs=0.001)
    assert fats.why_not == "more fat would only raise the superfat further"


def test_a_fat_that_is_short_with_the_lye_made() -> None:
    case = batch(COCONUT, 200_000)
    pour, lye, fats = ways(case, PLENTY)
    # 100 g of coconut are missing, 25.7 of 210.1 g KOH: 1 - 199.595 / 184.4 = -8.24 %
    assert superfat(pour) == pytest.approx(-8.24, abs=0.01)
    # 184.4 / 210.1 = 87.768 % of the solution: 17.405 g of NaOH and 34.810 g of water stay in the jug
    assert changes(case, lye) == pytest.approx({"soda": -17.405, "water": -34.810}, abs=0.002)
    assert superfat(lye) == pytest.approx(5, abs=0.001)
    # or the missing 100 g, as far as they are free
    assert changes(case, fats) == {"coconut": 100}
    assert superfat(fats) == pytest.approx(5, abs=0.001)
    assert ways(case, {"coconut": 100_000})[2].why_not is None
    short = ways(case, {"coconut": 99_999})[2]
    assert short.why_not == "it takes 100.0 g more of coconut, and 99.999 g is free"
    assert short.superfat is None


def test_a_fat_that_is_over_before_the_lye_is_made() -> None:
    case = batch(OLIVE, 800_000, lye_made=False)
    pour, lye, fats = ways(case, PLENTY)
    # 100 g more olive take 19 g KOH more: 229.1; the lye as planned leaves 1 - 199.595 / 229.1 = 12.88 %
    assert superfat(pour) == pytest.approx(12.88, abs=0.01)
    # weigh 229.1 x 0.95 x 0.7128876 = 155.156 g in place of 142.289 g; the water stays as it is
    assert changes(case, lye) == pytest.approx({"soda": 12.867}, abs=0.002)
    assert superfat(lye) == pytest.approx(5, abs=0.001)
    assert fats.why_not == "more fat would only raise the superfat further"


def test_a_fat_that_is_over_with_the_lye_made_takes_more_of_the_same_lye() -> None:
    case = batch(OLIVE, 800_000)
    # 229.1 / 210.1 - 1 = 9.0433 %: 12.867 g of NaOH in 25.735 g of water
    assert changes(case, ways(case, PLENTY)[1]) == pytest.approx({"soda": 12.867, "water": 25.735}, abs=0.002)


def test_more_fat_than_is_free_is_no_way_out() -> None:
    # too much alkali asks for 87.130 g of olive, and 50 g of it are free
    found = ways(batch(SODA, 160_000), {"olive": 50_000, "coconut": 10**9})[2]
    assert found.why_not == "it takes 87.1 g more of olive, and 50 g is free"
    assert ways(batch(SODA, 160_000), {})[2].why_not == "it takes 87.1 g more of olive, and 0 g is free"


def test_an_acid_that_was_overweighed_takes_its_alkali() -> None:
    # Citric acid 10 g planned takes 8.76084 g KOH, 6.2455 g NaOH: 148.535 g NaOH in all. With 20 g in it takes as much
    # again: pouring leaves 1 - (208.356 - 17.522) / 210.1 = 9.17 %. Lye as it was meant brings the fats 208.356 -
    # 8.761 = 199.595 g KOH net of its acid, and 8.761 g are missing: 4.3893 % more of it, its acid too.
    acid = line(5, "additive", "citric", 10_000, acid_koh_mg_per_kg=876_084)
    case = batch(5, 20_000, more=(acid,))
    planned = {SODA: 148_535, WATER: 297_070}
    lines = (
        replace(one, mass_mg=mass, target_mg=mass) if (mass := planned.get(one.number)) else one for one in case.lines
    )
    case = replace(case, lines=tuple(lines))
    pour, lye, _ = ways(case, PLENTY)
    assert superfat(pour) == pytest.approx(9.17, abs=0.01)
    assert changes(case, lye) == pytest.approx({"soda": 6.5197, "water": 13.039, "citric": 0.4389}, abs=0.004)
    assert superfat(lye) == pytest.approx(5, abs=0.001)


@pytest.mark.parametrize(
    ("nominal", "likely", "says"),
    [
        (-1, -20_000, "lye is left over and the bars would burn: do not pour it"),
        (0, -20_000, "lye is left over and the bars would burn: do not pour it"),
        (10_000, 0, "do not pour it without testing every bar"),
        (50_000, 28_000, "an ordinary bar"),
    ],
)
def test_lye_left_over_is_never_poured(nominal: int, likely: int, says: str) -> None:
    assert what_it_means(Superfat(nominal, likely, likely, ())).endswith(says)
