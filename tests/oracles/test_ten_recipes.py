"""Twelve soaps planned, weighed and shown, against arithmetic that stands here and shares nothing with the program.

The function works in moles of alkali, by atomic weights as published (H 1.008, C 12.011, O 15.999, Na 22.98977,
K 39.0983): fats by their saponification value, acids by their protons. The program works in grams of KOH.
"""

import shutil
from typing import Any, NamedTuple

import pytest
from making import MADE, batch_of, deliver, lines_of, planned
from shop import Shop, work_a_shop

from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.storage.book import Book
from ledger.views.bench.worksheet import worksheet
from ledger.views.lye.lye_check import lye_check

H, C, O, NA, K = 1.008, 12.011, 15.999, 22.98977, 39.0983  # noqa: E741
SODA, POTASH = NA + O + H, K + O + H
ACETIC, CITRIC = 2 * C + 4 * H + 2 * O, 6 * C + 8 * H + 7 * O
BICARBONATE = NA + H + C + 3 * O

VALUES = {"olive oil": 190.0, "coconut oil": 257.0, "shea butter": 180.0, "stearic": 198.0}
# mol of alkali that a gram takes: vinegar of 5 %, the acids as sold, milk of 9 mg KOH per g
TAKES = {
    "vinegar": 0.05 / ACETIC,
    "citric acid": 3 / CITRIC,
    "bicarbonate": 1 / BICARBONATE,
    "goat milk": 0.009 / POTASH,
}
WATER = {"water": 1.0, "vinegar": 0.95, "goat milk": 0.87}


class Soap(NamedTuple):
    """One recipe: grams, what alkali is added for, what the lye is not reckoned for, and when it goes in."""

    fats: dict[str, float]
    superfat: float = 5.0
    process: str = "cold"
    lye: dict[str, float] = {"soda": 100.0}  # percent of the demand by alkali
    ratio: float = 2.0
    added: dict[str, float] = {}  # acids with added alkali
    free: dict[str, float] = {}  # what takes alkali and gets none
    late: str = ""  # the fat held back
    when: str = ""
    on_top: bool = False  # the lye is not reckoned for the fat held back
    stage: str = "with the lye"


PURITY = {"soda": 1.0, "potash": 0.9, "lye 50": 0.5}
MOLAR = {"soda": SODA, "potash": POTASH, "lye 50": SODA}


class Reckoned(NamedTuple):
    """Grams of each alkali as sold, grams of plain water, and superfats in percent."""

    lye: dict[str, float]
    water: float
    superfat: float
    in_the_pot: float | None
    strength: float


def moles(fats: dict[str, float]) -> float:
    return sum(grams * VALUES[name] / 1000 / POTASH for name, grams in fats.items())


def reckon(soap: Soap) -> Reckoned:
    """All of it by hand."""
    counted = {name: grams for name, grams in soap.fats.items() if not (soap.on_top and name == soap.late)}
    for_acids = sum(grams * TAKES[name] for name, grams in soap.added.items())
    needed = moles(counted) * (1 - soap.superfat / 100) + for_acids
    lye = {name: needed * percent / 100 * MOLAR[name] / PURITY[name] for name, percent in soap.lye.items()}
    dry = sum(grams * (0.5 if name == "lye 50" else 1) for name, grams in lye.items())
    others = {**soap.added, **soap.free}
    brought = sum(grams * WATER.get(name, 0) for name, grams in others.items()) + lye.get("lye 50", 0) * 0.5
    there = sum(grams * PURITY[name] / MOLAR[name] for name, grams in lye.items())
    left = there - sum(grams * TAKES[name] for name, grams in others.items())
    pot = None
    if soap.when == "after the cook":
        pot = 100 * (1 - left / moles({name: n for name, n in soap.fats.items() if name != soap.late}))
    whole = soap.ratio * dry
    return Reckoned(lye, whole - brought, 100 * (1 - left / moles(soap.fats)), pot, 100 * dry / (dry + whole))


SOAPS = {
    "plain": Soap({"olive oil": 600, "coconut oil": 400}),
    "thick lye": Soap({"olive oil": 900, "coconut oil": 100}, superfat=7.5, ratio=1.5),
    "vinegar": Soap({"olive oil": 600, "coconut oil": 400}, added={"vinegar": 200}),
    "citric, no alkali for it": Soap({"olive oil": 600, "coconut oil": 400}, free={"citric acid": 10}),
    "citric at trace": Soap({"olive oil": 600, "coconut oil": 400}, added={"citric acid": 20}, stage="at trace"),
    "bicarbonate": Soap({"olive oil": 700, "coconut oil": 300}, added={"bicarbonate": 15}),
    "milk that takes alkali": Soap({"olive oil": 700, "coconut oil": 300}, free={"goat milk": 100}),
    "two alkalis": Soap({"olive oil": 600, "coconut oil": 300, "stearic": 100}, lye={"soda": 60, "potash": 40}),
    "potash": Soap({"olive oil": 800, "coconut oil": 200}, superfat=6, lye={"potash": 100}, ratio=3),
    "stock lye": Soap({"olive oil": 600, "coconut oil": 400}, lye={"lye 50": 100}),
    "hot, shea after the cook": Soap(
        {"olive oil": 600, "coconut oil": 350, "shea butter": 50}, process="hot", late="shea butter",
        when="after the cook", on_top=True,
    ),
    "hot, shea at trace": Soap(
        {"olive oil": 600, "coconut oil": 300, "shea butter": 100}, process="hot", late="shea butter", when="at trace"
    ),
}  # fmt: skip


def text_of(soap: Soap) -> str:
    parts = [
        f'name = "Tried"\ncode = "tried"\nprocess = "{soap.process}"\nsuperfat = {soap.superfat}\n'
        f'[water]\nmaterial = "water"\nper_alkali = {soap.ratio}\n'
    ]
    for name, percent in soap.lye.items():
        kind = "KOH" if name == "potash" else "NaOH"
        parts.append(f'[[alkali]]\nmaterial = "{name}"\nkind = "{kind}"\npercent_of_demand = {percent}\n')
    for name, grams in soap.fats.items():
        held = f'when = "{soap.when}"\nin_demand = {str(not soap.on_top).lower()}\n' if name == soap.late else ""
        parts.append(f'[[fat]]\nmaterial = "{name}"\ngrams = {grams:g}\n{held}')
    for name, grams in {**soap.added, **soap.free}.items():
        table = "liquid" if name == "goat milk" else "additive"
        told = "" if table == "liquid" else f"add_alkali = {str(name in soap.added).lower()}\n"
        parts.append(f'[[{table}]]\nmaterial = "{name}"\ngrams = {grams:g}\nwhen = "{soap.stage}"\n{told}')
    return "\n".join(parts)


def stock_up(book: Book) -> None:
    """Everything these soaps are made of."""
    for name, kind, facts in (
        ("shea butter", "fat", {"sap_low_mg_per_kg": 180_000, "sap_high_mg_per_kg": 180_000}),
        ("stearic", "fat", {"sap_low_mg_per_kg": 198_000, "sap_high_mg_per_kg": 198_000}),
        ("soda", "alkali", {"alkali_kind": "NaOH"}),
        ("potash", "alkali", {"alkali_kind": "KOH", "purity_ppm": 900_000}),
        ("lye 50", "alkali", {"alkali_kind": "NaOH", "purity_ppm": 500_000, "water_ppm": 500_000}),
        ("vinegar", "additive", {"acid_koh_mg_per_kg": round(POTASH / ACETIC * 1e6), "purity_ppm": 50_000}),
        ("citric acid", "additive", {"acid_koh_mg_per_kg": round(3 * POTASH / CITRIC * 1e6), "purity_ppm": 1_000_000}),
        ("bicarbonate", "additive", {"acid_koh_mg_per_kg": round(POTASH / BICARBONATE * 1e6), "purity_ppm": 1_000_000}),
        ("goat milk", "liquid", {"acid_koh_mg_per_kg": 9_000, "water_ppm": 870_000}),
    ):
        add_material(book, MaterialFacts(name, name, **facts), kind=kind, code=None)  # type: ignore[arg-type]
        deliver(book, DeliveryLine(name, 2_000_000, f"{name} 1", 500))


@pytest.fixture
def store(shop: Shop, built: Any) -> Shop:
    shutil.copyfile(built("ten recipes", stock_up, built("shop", work_a_shop)[0])[0], shop.book.path)
    return shop


@pytest.mark.parametrize("name", SOAPS)
def test_a_soap_is_planned_and_weighed_as_by_hand(store: Shop, name: str) -> None:
    soap, by_hand = SOAPS[name], reckon(SOAPS[name])
    add_recipe(store.book, text_of(soap), file="tried.toml")
    code = planned(store.book, "tried")
    masses = {line.material: line.target / 1000 for line in lines_of(store.book, code)}
    assert {one: masses[one] for one in by_hand.lye} == pytest.approx(by_hand.lye, abs=0.005)
    assert masses["water"] == pytest.approx(by_hand.water, abs=0.01)
    sheet = worksheet(store.rows(), code, program="test")
    assert (sheet.lye_concentration_ppm or 0) / 10_000 == pytest.approx(by_hand.strength, abs=0.005)
    takes = {line.number: [Weighed(line.target)] for line in lines_of(store.book, code)}
    found = weigh(store.book, code, takes, on=MADE, by="Nuala")
    assert (found.superfat_ppm or 0) / 10_000 == pytest.approx(by_hand.superfat, abs=0.005)
    pot = found.before_addition.nominal_ppm / 10_000 if found.before_addition else None
    assert pot == (None if by_hand.in_the_pot is None else pytest.approx(by_hand.in_the_pot, abs=0.005))


def test_what_went_in_instead_is_reckoned_as_by_hand(store: Shop) -> None:
    """250 g of 600 g of olive oil were coconut oil; the lye was weighed for what it should have been."""
    add_recipe(store.book, text_of(SOAPS["plain"]), file="tried.toml")
    code = planned(store.book, "tried")
    takes: dict[int, Any] = {line.number: [Weighed(line.target)] for line in lines_of(store.book, code)}
    takes[1] = [Weighed(350_000, store.olive), Weighed(250_000, store.coconut)]
    weigh(store.book, code, takes, on=MADE, by="Nuala", instead=True)
    there = reckon(SOAPS["plain"]).lye["soda"] / SODA
    by_hand = 100 * (1 - there / moles({"olive oil": 350, "coconut oil": 650}))
    with store.book.look() as rows:
        found = lye_check(rows, batch_of(store.book, code).id)
    assert (found.superfat_ppm or 0) / 10_000 == pytest.approx(by_hand, abs=0.005)
