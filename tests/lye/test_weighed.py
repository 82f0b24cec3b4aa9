"""The lye of a batch as weighed, from the facts alone: which figures are known when, worked out by hand with KOH."""

from typing import Any

import pytest
from shop import PLAIN_BAR

from ledger.domain.bench.alkali import AlkaliWanted, wanted
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.weighed import Weighed, checked, dry_alkali, water_of
from ledger.domain.recipe.reader import read_recipe
from ledger.units.words import Process, Stage

GRAM = 1_000
OIL = Figures("oil", 190_000, 190_000, sap_of="lot L1-X: certificate")  # 190 g KOH for 1000 g
ACID = Figures("acid", acid_koh_mg_per_kg=800_000)  # 10 g use up 8 g KOH
POTASH = Figures("potash", alkali_kind="KOH", purity_low_ppm=900_000, purity_high_ppm=900_000)


def fat(grams: int, stage: Stage = "in the fats") -> Weighed:
    return Weighed("fat", stage, 1, 1, grams * GRAM, OIL, "a paper")


def acid(grams: int, stage: Stage = "at trace") -> Weighed:
    return Weighed("additive", stage, 2, 2, grams * GRAM, ACID, "")


def potash(grams: int, figures: Figures = POTASH) -> Weighed:
    return Weighed("alkali", "with the lye", 3, 3, grams * GRAM, figures, "a paper")


def nominal(
    weighed: list[Weighed], *still: Weighed, process: Process = "hot", in_demand: tuple[tuple[int, Stage], ...] = ()
) -> Any:
    """(superfat, superfat of the pot before a fat held back) as reckoned, in ppm; None where it is not known."""
    found = checked(weighed, still, process, GRAM, in_demand=in_demand)
    return tuple(one and one.nominal_ppm for one in (found.superfat, found.before_addition))


# 200 g of potash at 90 % are 180 g KOH. 1000 g of the oil take 190 g: 10 of 190 are left, 5.2632 %.
# With 100 g more they take 209 g: 29 of 209, 13.8756 %.


@pytest.mark.parametrize(
    ("weighed", "still"),
    [
        ([], [fat(1000), potash(200)]),
        ([fat(1000)], [potash(200)]),
        ([potash(200)], [fat(1000)]),
        ([fat(900), potash(200)], [fat(100)]),  # not held back, so it is still missing
        ([fat(1000), potash(100)], [potash(100)]),
    ],
)
def test_nothing_is_reckoned_until_the_fats_and_the_alkali_are_weighed(
    weighed: list[Weighed], still: list[Weighed]
) -> None:
    assert nominal(weighed, *still) == (None, None)


@pytest.mark.parametrize("process", ["cold", "hot"])
def test_the_superfat_is_of_all_that_was_weighed(process: Process) -> None:
    assert nominal([fat(1000), potash(200)], process=process) == (52_632, None)


def test_a_fat_held_back_leaves_the_pot_to_be_reckoned_first() -> None:
    assert nominal([fat(1000), potash(200)], fat(100, "after the cook")) == (None, 52_632)
    assert nominal([fat(1000), fat(100, "after the cook"), potash(200)]) == (138_756, 52_632)
    assert nominal([fat(1000), fat(100, "at trace"), potash(200)], process="cold") == (138_756, None)
    assert nominal([fat(1000), potash(200)], fat(100, "at trace"), process="cold") == (None, None)


def test_an_acid_still_to_come_counts_where_alkali_was_weighed_for_it() -> None:
    """8 g of the 180 g KOH are for the acid: 18 of 190 are left, 9.4737 %."""
    lye = [fat(1000), potash(200)]
    assert nominal(lye, acid(10), in_demand=((2, "at trace"),)) == (94_737, None)
    assert nominal(lye, acid(10), in_demand=()) == (52_632, None)
    assert nominal([*lye, acid(10)], in_demand=()) == (94_737, None)  # what is in, is in
    assert nominal([fat(1000)], acid(10), in_demand=((2, "at trace"),)) == (None, None)


def test_the_water_of_a_stock_lye_is_water_and_no_alkali() -> None:
    """400 g of stock lye with 55 % water: 220 g of water, 180 g of alkali. 10 g of an acid at 88 %: 1.2 g of water."""
    stock = potash(400, POTASH._replace(water_ppm=550_000))
    vinegar = Weighed("additive", "with the lye", 2, 2, 10 * GRAM, ACID._replace(purity_low_ppm=880_000), "")
    milk = Weighed("liquid", "with the lye", 4, 4, 100 * GRAM, Figures("milk", water_ppm=870_000), "")
    assert dry_alkali([stock, fat(1000)]) == 180 * GRAM
    assert water_of([stock, fat(1000)]) == 220 * GRAM
    assert water_of([potash(200)]) == 0
    assert water_of([stock, vinegar, milk]) == 220 * GRAM + 1_200 + 87 * GRAM
    assert dry_alkali([potash(200)]) == 200 * GRAM


def test_what_was_weighed_is_summed_and_each_figure_is_named() -> None:
    half = potash(100, POTASH._replace(name="potash B", purity_low_ppm=800_000, purity_high_ppm=800_000))
    soda = Weighed("alkali", "with the lye", 5, 5, 50 * GRAM, Figures("soda", alkali_kind="NaOH"), "")
    found = checked([fat(1000), potash(100), half, soda], [], "cold", GRAM)
    assert (found.fats_mg, found.alkali_mg, found.alkali_kind) == (1000 * GRAM, 250 * GRAM, "KOH and NaOH")
    assert found.purity_ppm == 880_000  # 90 + 80 + 50 g pure of 250 g
    assert found.figures[1] == "saponification value 190 ± 1 mg KOH/g (a paper)"
    assert found.figures[5] == "no certificate, reckoned as pure"
    assert checked([], [], "cold", GRAM).purity_ppm is None


RECIPE = read_recipe(PLAIN_BAR.replace('kind = "NaOH"', 'kind = "KOH"'), file="plain.toml")  # superfat 5 %
OPEN = potash(180)


def asked(
    weighed: list[Weighed], *still: Weighed, counted: dict[tuple[int, Stage], bool] | None = None
) -> tuple[AlkaliWanted, ...]:
    return wanted(RECIPE, weighed, still, counted or {})


def test_the_alkali_is_asked_for_once_the_fats_are_weighed() -> None:
    """1000 g take 190 g KOH, less 5 % is 180.5 g; at 90 % that is 200.5556 g of potash."""
    assert asked([fat(1000)], OPEN) == (AlkaliWanted("potash", 180 * GRAM, 200_556),)
    assert asked([fat(900)], fat(100), OPEN) == ()
    assert asked([], OPEN) == ()
    assert asked([fat(1000)]) == ()  # none is open


def test_what_goes_in_later_counts_with_its_target_where_it_is_in_demand() -> None:
    """With 100 g more, 209 g less 5 % are 198.55 g, 220.6111 g of potash; 8 g for the acid are 8.8889 g more."""
    late = fat(100, "after the cook")
    assert asked([fat(1000)], late, OPEN)[0].wanted_mg == 220_611
    assert (
        asked([fat(1000)], acid(10), OPEN, counted={(1, "in the fats"): True, (2, "at trace"): True})[0].wanted_mg
        == 209_444
    )
    assert asked([fat(1000)], acid(10), OPEN, counted={(2, "at trace"): False})[0].wanted_mg == 200_556


def test_two_lots_of_one_alkali_are_one_and_the_purest_counts() -> None:
    """At 100 %, 180.5 g; both targets are together what was planned."""
    pure = potash(20, POTASH._replace(purity_low_ppm=1_000_000, purity_high_ppm=1_000_000))
    assert asked([fat(1000)], OPEN, pure) == (AlkaliWanted("potash", 200 * GRAM, 180_500),)


def test_one_fat_or_acid_at_two_times_counts_at_each_by_itself() -> None:
    """1000 g in the base alone, less 5 %: 180.5 g KOH; 8 g for the acid at trace, none for that in the fats."""
    late = fat(100, "after the cook")
    only: dict[tuple[int, Stage], bool] = {(1, "in the fats"): True, (1, "after the cook"): False}
    assert asked([fat(1000)], late, OPEN, counted=only)[0].wanted_mg == 200_556
    acids: dict[tuple[int, Stage], bool] = {(2, "in the fats"): False, (2, "at trace"): True}
    assert asked([fat(1000), acid(10, "in the fats")], acid(10), OPEN, counted=acids)[0].wanted_mg == 209_444
    lye = [fat(1000), potash(200)]
    assert nominal(lye, acid(10), acid(10, "after the cook"), in_demand=((2, "at trace"),)) == (94_737, None)
