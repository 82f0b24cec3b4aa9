"""Booking an assessment: one entry, the latest counts, and nothing is written for a file that cannot be read."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.assess import assess_recipe
from ledger.rows.history import last_entry
from ledger.rows.recipe import recipe_by_code
from ledger.views.release.assessment import latest_assessment

FIRST = """
assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
process = ["cold"]
markets = ["eu", "gb"]
[[ingredient]]
inci = "AQUA"
highest_percent = 25
"""
SECOND = FIRST.replace("QR-114", "QR-131").replace("2026-03-03", "2026-05-04")


def latest(shop: Any) -> str | None:
    """The reference of the assessment that counts."""
    rows = shop.rows()
    found = latest_assessment(rows, recipe_by_code(rows, "plain-bar"))
    return found and found.reference


def test_it_is_booked_as_one_entry_that_says_whose_it_is(shop: Any) -> None:
    assert latest(shop) is None
    card, given = assess_recipe(shop.book, "plain", FIRST, file="plain.toml")
    assert (card.code, given.reference, given.on) == ("plain-bar", "QR-114", date(2026, 3, 3))
    entry = shop.rows().execute("SELECT verb, said FROM entry ORDER BY id DESC LIMIT 1").fetchone()
    assert tuple(entry) == (
        "recipe assess",
        "Booked assessment QR-114 of R. Lund, 3 Mar 2026, for Plain Bar (plain-bar).",
    )
    assert [row[0] for row in shop.rows().execute("SELECT source FROM assessment")] == [FIRST]
    assert check(shop.rows()).findings == ()


def test_the_latest_counts_until_it_is_taken_back(shop: Any) -> None:
    assess_recipe(shop.book, "plain-bar", FIRST, file="plain.toml")
    assess_recipe(shop.book, "plain-bar", SECOND, file="plain.toml")
    assert latest(shop) == "QR-131"
    undo(shop.book, last_entry(shop.rows()))
    assert latest(shop) == "QR-114"


@pytest.mark.parametrize(
    ("code", "text", "said"),
    [
        ("rose", FIRST, "No recipe is called 'rose'"),
        ("plain-bar", FIRST.replace('"gb"', '"uk"'), "plain.toml, line 6: 'uk' is not a market known here."),
        ("plain-bar", FIRST.replace("cold", "warm"), "plain.toml, line 5: process 'warm' is not known here"),
    ],
)
def test_what_cannot_be_booked_leaves_the_ledger_as_it_was(shop: Any, code: str, text: str, said: str) -> None:
    before = shop.book.path.read_bytes()
    with pytest.raises(BadInput) as caught:
        assess_recipe(shop.book, code, text, file="plain.toml")
    assert said in str(caught.value)
    assert shop.book.path.read_bytes() == before


def test_an_infusion_is_assessed_with_the_soap_it_goes_into(shop: Any) -> None:
    add_material(shop.book, MaterialFacts("petals", "Calendula Officinalis Flower"), kind="botanical", code=None)
    oil = MaterialFacts("petal oil", "Olea Europaea Fruit Oil", None, 190_000, 190_000, "certificate")
    add_material(shop.book, oil, kind="fat", code=None)
    text = 'name = "Petal Oil"\ncode = "petals-in-oil"\nprocess = "infusion"\n[infusion]\nyields = "petal oil"\n'
    text += '[[part]]\nmaterial = "olive oil"\ngrams = 500\n[[part]]\nmaterial = "petals"\ngrams = 40\n'
    add_recipe(shop.book, text, file="petals.toml")
    with pytest.raises(BadInput, match="Petal Oil is made by infusion and gives no bars"):
        assess_recipe(shop.book, "petals-in-oil", FIRST, file="petals.toml")
