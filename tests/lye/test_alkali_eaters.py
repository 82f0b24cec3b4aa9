"""What uses up alkali beside the fats: by its formula, or as she states it of anything.

The arithmetic stands here, with IUPAC's abridged atomic weights; nothing is taken from the program.
"""

from typing import Any

import pytest
from making import MADE, deliver, lines_of, planned
from once import once
from shop import PLAIN_BAR, Shop

from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import find_batch
from ledger.views.recipe.composition import batch_stages

NAOH, KOH = 39.99677, 56.1053
ATOMS = {"C": 12.011, "H": 1.008, "O": 15.999, "Na": 22.98977, "K": 39.0983, "N": 14.007}


def molar(**atoms: int) -> float:
    return sum(ATOMS[atom] * number for atom, number in atoms.items())


# What each is by its atoms, and how many protons it gives to the lye of a soap (for EDTA less than all: see its row).
EATERS = {
    "citric acid": (molar(C=6, H=8, O=7), 3),
    "malic acid": (molar(C=4, H=6, O=5), 2),
    "tartaric acid": (molar(C=4, H=6, O=6), 2),
    "cream of tartar": (molar(C=4, H=5, K=1, O=6), 1),
    "ascorbic acid": (molar(C=6, H=8, O=6), 1),
    "gluconolactone": (molar(C=6, H=10, O=6), 1),
    "EDTA": (molar(C=10, H=16, N=2, O=8), 3),
    "disodium EDTA": (molar(C=10, H=18, N=2, Na=2, O=10), 1),
    "sodium bicarbonate": (molar(C=1, H=1, Na=1, O=3), 1),
}


def soda(shop: Shop, code: str) -> float:
    return next(line.target for line in lines_of(shop.book, code) if line.role == "alkali") / 1000


@once
def plan(shop: Shop, more: str, *, text: str = PLAIN_BAR) -> str:
    add_recipe(shop.book, text.replace("plain-bar", "with").replace("Plain Bar", "With") + more, file="with.toml")
    return planned(shop.book, "with")


@pytest.mark.parametrize("name", EATERS)
def test_alkali_is_added_for_what_its_formula_takes(shop: Shop, run: Any, name: str) -> None:
    mass, protons = EATERS[name]
    run("material", "add", "eater", "--like", name, "--inci", "EATER")
    deliver(shop.book, DeliveryLine("eater", 1_000_000, "E 1", 500))
    code = plan(shop, '\n[[additive]]\nmaterial = "eater"\ngrams = 10\nwhen = "with the lye"\nadd_alkali = true\n')
    # the fats 600 x 190 + 400 x 257 = 216.8 g KOH, 95 % of it; and 10 g of it
    by_hand = (216.8 * 0.95 / KOH + 10 * protons / mass) * NAOH
    assert soda(shop, code) == pytest.approx(by_hand, abs=0.002)


def test_a_solution_goes_by_its_strength(shop: Shop, run: Any) -> None:
    run("material", "add", "gluconic", "--like", "gluconic acid", code=2)  # sold as a solution: how strong?
    run("material", "add", "gluconic", "--like", "gluconic acid", "--strength", "50")
    deliver(shop.book, DeliveryLine("gluconic", 1_000_000, "G 1", 500))
    code = plan(shop, '\n[[additive]]\nmaterial = "gluconic"\ngrams = 20\nwhen = "with the lye"\nadd_alkali = true\n')
    gluconic = molar(C=6, H=12, O=7)
    assert soda(shop, code) == pytest.approx((216.8 * 0.95 / KOH + 10 / gluconic) * NAOH, abs=0.002)


@pytest.mark.parametrize(
    ("kind", "table", "words"),
    [
        ("liquid", "liquid", ("--water", "87")),
        ("fragrance", "fragrance", ()),
        ("botanical", "additive", ()),
        ("additive", "additive", ()),
    ],
)
def test_anything_may_state_what_it_uses_up_and_the_superfat_rises(
    shop: Shop, run: Any, kind: str, table: str, words: tuple[str, ...]
) -> None:
    run("material", "add", "thing", "--kind", kind, "--inci", "THING", "--uses-up", "8-12", *words)
    deliver(shop.book, DeliveryLine("thing", 1_000_000, "T 1", 500))
    told = "add_alkali = false\n" if table == "additive" else ""
    code = plan(shop, f'\n[[{table}]]\nmaterial = "thing"\ngrams = 100\nwhen = "at trace"\n{told}')
    assert soda(shop, code) == pytest.approx(216.8 * 0.95 / KOH * NAOH, abs=0.002)  # none is added
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    found = weigh(shop.book, code, takes, on=MADE, by="Nuala")
    # of the range the lower end, which promises less: 100 x 8 = 0.8 g KOH of 216.8 is 0.369 points more superfat
    assert (found.superfat_ppm or 0) / 10_000 == pytest.approx(5 + 100 * 0.8 / 216.8, abs=0.002)


def test_a_fat_states_it_in_its_saponification_value(run: Any, shop: Shop) -> None:
    assert shop.olive
    said = run("material", "edit", "olive oil", "--uses-up", "12", code=2).stderr
    assert "its saponification value tells that" in said


def test_a_liquid_that_uses_up_alkali_says_its_water_and_keeps_it(shop: Shop, run: Any) -> None:
    assert "Add --water" in run("material", "add", "milk", "--kind", "liquid", "--uses-up", "8", code=2).stderr
    run("material", "add", "milk", "--kind", "liquid", "--water", "87", "--uses-up", "8", "--inci", "CAPRAE LAC")
    deliver(shop.book, DeliveryLine("milk", 1_000_000, "M 1", 500))
    code = plan(shop, '\n[[liquid]]\nmaterial = "milk"\ngrams = 100\n')
    water = next(line.target for line in lines_of(shop.book, code) if line.material == "water") / 1000
    assert water == pytest.approx(2 * soda(shop, code) - 87, abs=0.002)


def test_the_water_of_potash_dries_like_water(shop: Shop, run: Any) -> None:
    run("material", "add", "potash", "--alkali", "KOH", "--purity", "90")
    deliver(shop.book, DeliveryLine("potash", 1_000_000, "P 1", 500))
    text = PLAIN_BAR.replace('"sodium hydroxide"', '"potash"').replace('"NaOH"', '"KOH"')
    code = plan(shop, "", text=text)
    takes = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    weigh(shop.book, code, takes, on=MADE, by="Nuala")
    with shop.book.look() as rows:
        stages = batch_stages(rows, find_batch(rows, code))
    assert stages is not None
    potash = 216.8 * 0.95 / 0.9
    # the water of the jug, 2 : 1 of the flakes as sold, and the tenth of them that is none of the alkali
    assert stages.cut.of("water") / 1000 == pytest.approx(2 * potash + 0.1 * potash, abs=0.02)
    assert stages.cut.of("rest of the alkali") == 0
