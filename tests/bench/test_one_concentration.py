"""The lye concentration is one figure wherever it is shown: recipe, plan, worksheet, sheet, record, JSON, correction.

It counts all the water, that of vinegar, milk and what goes in at trace too; the jug's own is called so.
"""

import json
import re
from typing import Any

import pytest
from making import MADE, deliver, lines_of
from once import once
from pypdf import PdfReader
from shop import PLAIN_BAR, Shop

from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine

MORE = """
[[additive]]
material = "vinegar"
grams = 100
when = "with the lye"
add_alkali = true

[[liquid]]
material = "goat milk"
grams = 60
when = "at trace"
"""


@pytest.fixture
@once
def sour(shop: Shop) -> Shop:
    for name, kind, facts in (
        ("vinegar", "additive", {"acid_koh_mg_per_kg": 934_279, "purity_ppm": 50_000}),
        ("goat milk", "liquid", {"water_ppm": 870_000}),
    ):
        add_material(shop.book, MaterialFacts(name, name, **facts), kind=kind, code=None)  # type: ignore[arg-type]
        deliver(shop.book, DeliveryLine(name, 2_000_000, f"{name} 1", 500))
    text = PLAIN_BAR.replace("per_alkali = 2.0", "lye_concentration = 31") + MORE
    add_recipe(shop.book, text.replace("plain-bar", "sour").replace("Plain Bar", "Sour"), file="sour.toml")
    return shop


def test_it_is_31_percent_everywhere(sour: Shop, run: Any) -> None:
    def said(*words: str) -> str:
        return " ".join(run(*words).stdout.replace("\u00a0", " ").split())

    def paper(file: str) -> str:
        text = " ".join(page.extract_text() for page in PdfReader(file).pages)
        return " ".join(text.replace("\u00a0", " ").split())

    # 146.826 g for the fats and 100 x 0.05 / 60.052 x 39.99677 = 3.330 g for the vinegar: 150.157 g
    assert "Lye concentration 31.0 %" in said("recipe", "show", "sour")
    assert json.loads(run("recipe", "show", "sour", "--json").stdout)["lye"]["concentration_ppm"] == 310_000
    run("recipe", "print", "sour", "-o", "recipe.pdf")
    assert "concentration 31.0 %" in paper("recipe.pdf")
    assert "lye concentration 31.0 %" in said("batch", "plan", "sour", "--on", "2026-05-06", "-o", "sheet.pdf")
    assert re.search(r"lye 31\.0 %", paper("sheet.pdf"))
    code = "26-002-2"
    lines = {line.material: line for line in lines_of(sour.book, code)}
    water = lines["water"].target / 1000 + 95 + 0.87 * 60
    assert lines["sodium hydroxide"].target / 1000 / (lines["sodium hydroxide"].target / 1000 + water) == pytest.approx(
        0.31, abs=0.0001
    )
    weigh(sour.book, code, {n.number: [Weighed(n.target)] for n in lines.values()}, on=MADE, by="Nuala")
    assert "lye: 31.0 %" in said("batch", "show", code) or "lye 31.0 %" in said("batch", "show", code)
    assert json.loads(run("batch", "show", code, "--json").stdout)["lye_concentration_ppm"] == pytest.approx(
        310_000, abs=10
    )
    run("batch", "show", code, "-o", "record.pdf")
    assert re.search(r"lye concentration 31\.0 %", paper("record.pdf"))
    number, target = lines["water"].number, lines["water"].target / 1000
    assert "the lye is then 31.0 %" in said("batch", "correct", code, f"{number}={target:.2f} g")
