"""Where oil is steeped or melted there is no lye: its sheet says so by leaving it out, and when it is strained."""

from datetime import date
from pathlib import Path
from typing import Any

import pytest
from making import deliver
from once import once
from pypdf import PdfReader
from shop import Shop

from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine

pytestmark = pytest.mark.usefixtures("frozen")  # 1 Jun 2026

PETALS = """
name = "Calendula oil"
code = "calendula-oil"
process = "infusion"
[infusion]
yields = "calendula oil"
days = 28
[[part]]
material = "olive oil"
grams = 500
[[part]]
material = "petals"
grams = 50
"""
LYE_WORDS = ("lye", "Goggles", "caustic", "superfat", "Superfat")


@pytest.fixture
@once
def steeping(shop: Shop) -> Shop:
    for name, kind in (("petals", "botanical"), ("calendula oil", "fat")):
        facts = (
            MaterialFacts(name, None, None, 190_000, 190_000, "certificate") if kind == "fat" else MaterialFacts(name)
        )
        add_material(shop.book, facts, kind=kind, code=None)  # type: ignore[arg-type]
    deliver(shop.book, DeliveryLine("petals", 500_000, "bed 2", 0))
    add_recipe(shop.book, PETALS, file="c.toml")
    return shop


def drawn(path: Path) -> str:
    return " ".join(page.extract_text() for page in PdfReader(path).pages)


@pytest.mark.parametrize(
    ("on", "strained"),
    [("2026-06-01", "29 Jun 2026"), ("2026-02-01", "1 Mar 2026"), ("2027-02-01", "1 Mar 2027")],  # and 28 days each
)
def test_an_infusion_has_a_sheet_of_its_own(steeping: Shop, run: Any, tmp_path: Path, on: str, strained: str) -> None:
    deliver(steeping.book, DeliveryLine("olive oil", 1_000_000, "N", 0), on=date(2026, 1, 2))
    deliver(steeping.book, DeliveryLine("petals", 500_000, "N2", 0), on=date(2026, 1, 2))
    said = run("batch", "plan", "calendula-oil", "--on", on, "-o", "s.pdf").stdout
    assert f"Strain on {strained}: soapledger batch strain " in said
    sheet = drawn(tmp_path / "s.pdf")
    assert f"Strain on {strained}" in sheet
    for word in LYE_WORDS:
        assert word not in said
        assert word not in sheet


def test_its_worksheet_is_shown_in_words(steeping: Shop, run: Any) -> None:
    run("batch", "plan", "calendula-oil")
    code = steeping.rows().execute("SELECT code FROM batch ORDER BY id DESC").fetchone()[0]
    run("batch", "log", code, "--line", "1=498 g")
    said = run("batch", "show", code, "--worksheet").stdout
    assert said.startswith(f"Worksheet of batch {code}: calendula oil, version 1, for 1 Jun 2026.")
    assert "weighed" in said
    assert "498 g" in said
    assert "Bench, tools and moulds clean" in said
    assert "{" not in said
    assert run("batch", "show", code, "--worksheet", "--json").stdout.startswith("{")


def test_a_soap_keeps_its_cautions_and_its_limits(shop: Shop, run: Any) -> None:
    said = run("batch", "show", shop.batch, "--worksheet").stdout
    for words in ("Goggles", "Lye into water", "Superfat 5.0 %", "within 5.0 °C of each other"):
        assert words in said
    assert "Strain" not in said


def test_a_stock_lye_keeps_the_cautions_and_melted_fats_do_not(shop: Shop, run: Any) -> None:
    for name, alkali in (("lye 50", True), ("two oils", False)):
        facts = ("--alkali", "NaOH", "--strength", "50") if alkali else ("--kind", "fat", "--sap", "190")
        run("material", "add", name, *facts)
        first, second = ("sodium hydroxide", "water") if alkali else ("olive oil", "coconut oil")
        text = f'name = "B {name}"\ncode = "{name[-3:].strip()}"\nprocess = "blend"\n[blend]\nyields = "{name}"\n'
        text += "".join(f'[[part]]\nmaterial = "{one}"\ngrams = 100\n' for one in (first, second))
        add_recipe(shop.book, text, file="b.toml")
        said = run("batch", "plan", name[-3:].strip()).stdout
        assert ("Lye into water" in said) is alkali
