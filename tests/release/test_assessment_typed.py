"""recipe assess and recipe assessment at the command line."""

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from making import lines_of, planned
from shop import PLAIN_BAR

from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.material.materials import MaterialFacts, add_material, edit_material
from ledger.operations.recipe.recipes import add_recipe, revise_recipe

pytestmark = pytest.mark.usefixtures("frozen")

# The shop's bar: 600 g of olive oil, 400 g of coconut oil, 293.652 g of water and 146.826 g of sodium hydroxide (as
# reckoned in test_plan.py), 1440.478 g in all: 41.65 %, 27.77 %, 20.39 % and 10.19 %.
REPORT = """
assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
until = 2029-03-02
process = ["cold"]
markets = ["eu"]
superfat = [3, 8]
durability_months = 24
[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
lowest_percent = 30
highest_percent = 45
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 27
[[ingredient]]
inci = "AQUA"
highest_percent = 25
[[notification]]
market = "eu"
reference = "N-7"
on = 2026-03-10
"""


@pytest.fixture
def assessed(shop: Any, run: Callable[..., Any], tmp_path: Path) -> Any:
    """The worked shop with the assessment of its bar."""
    (tmp_path / "report.toml").write_text(REPORT, encoding="utf-8")
    shown = run("recipe", "assess", "plain", "report.toml").stdout
    assert shown.strip().startswith("Assessment QR-114 of R. Lund, 3 Mar 2026, is booked for Plain Bar.\n")
    assert "! SODIUM HYDROXIDE in Plain Bar is not named in it" in shown
    return shop


def sentence(shown: str) -> str:
    """The answer up to the table, on one line."""
    return " ".join(shown.split("  particular")[0].split())


@pytest.mark.usefixtures("assessed")
def test_the_recipe_as_written_is_answered_in_a_sentence_then_row_by_row(run: Callable[..., Any]) -> None:
    shown = run("recipe", "assessment", "plain-bar").stdout
    # 12 particulars: date, process, superfat, best before, 4 ingredients, 2 markets with a notification each
    assert sentence(shown) == (
        "Compared with assessment QR-114 of R. Lund, 3 Mar 2026: 3 of 12 particulars lie outside it, and it is silent "
        "on 1. Plain Bar, version 1, as written; as of 1 Jun 2026."
    )
    rows = [" ".join(line.split()) for line in shown.splitlines()]
    for row in (
        "COCOS NUCIFERA OIL 27.77 % at most 27 % outside",
        "market GB asked for EU outside",
        "SODIUM HYDROXIDE 10.19 % not named outside",
        "notification GB asked for not named silent",
        "OLEA EUROPAEA FRUIT OIL 41.65 % 30 % to 45 % inside",
        "AQUA 20.39 % at most 25 % inside",
        "superfat 5.0 % 3 % to 8 % inside",
        "notification EU asked for N-7 inside",
    ):
        assert row in rows
    assert "the assessor decides" in shown
    assert max(len(line) for line in shown.splitlines()) <= 80
    for word in ("compliant", "lawful", "safe ", "passes"):
        assert word not in shown.casefold()


@pytest.mark.usefixtures("assessed")
def test_the_markets_and_the_day_may_be_asked_for(run: Callable[..., Any]) -> None:
    words = ("recipe", "assessment", "plain-bar", "--market", "eu", "--on", "2 Mar 2026", "--json")
    told = json.loads(run(*words).stdout)
    outside = [one["what"] for one in told["compared"] if one["verdict"] == "outside"]
    assert outside == [
        "date",
        "COCOS NUCIFERA OIL",
        "SODIUM HYDROXIDE",
        "notification EU",
    ]  # assessed on 3 Mar, notified on 10 Mar
    assert (told["on"], told["outside"], told["silent"]) == ("2026-03-02", 4, 0)
    assert told["assessment"]["superfat_ppm"] == [30_000, 80_000]
    one = run("recipe", "assessment", "plain-bar", "--market", "eu").stdout
    assert "2 of 10 particulars lie outside it, and it is silent on none." in sentence(one)


def test_an_earlier_version_is_laid_beside_the_latest_assessment(assessed: Any, run: Callable[..., Any]) -> None:
    revise_recipe(assessed.book, "plain-bar", PLAIN_BAR.replace("superfat = 5", "superfat = 9"), file="plain.toml")
    now = run("recipe", "assessment", "plain-bar", "--market", "eu").stdout
    before = run("recipe", "assessment", "plain-bar", "--market", "eu", "--version", "1").stdout
    assert "version 2" in now
    assert "3 of 10" in sentence(now)  # 9 % superfat beside 3 % to 8 %
    assert "2 of 10" in sentence(before)


def test_a_batch_is_compared_as_it_was_weighed(assessed: Any, run: Callable[..., Any]) -> None:
    code = planned(assessed.book)
    olive, coconut, water, lye = (line.number for line in lines_of(assessed.book, code))
    # 600 + 360 + 240 + 133.4 g is 1333.4 g: coconut oil 360 g is 26.9986 %, under 27 % by 0.0014.
    # 600 x 190 + 360 x 257 mg/g is 206.52 g KOH, x 39.99677 / 56.1053 = 147.2256 g NaOH; 1 - 133.4 / 147.2256 = 9.39 %.
    actual = {olive: 600_000, coconut: 360_000, water: 240_000, lye: 133_400}
    weighed = {number: [Weighed(mass)] for number, mass in actual.items()}
    weigh(assessed.book, code, weighed, on=date(2026, 5, 6), by="Nuala")
    shown = run("recipe", "assessment", "plain-bar", "--batch", code, "--market", "eu").stdout
    assert f"Plain Bar, version 1, batch {code} as weighed; as of 1 Jun 2026." in shown
    rows = [" ".join(line.split()) for line in shown.splitlines()]
    assert "superfat 9.4 % 3 % to 8 % outside" in rows
    assert "COCOS NUCIFERA OIL just under 27 % at most 27 % inside" in rows
    assert "2 of 10 particulars lie outside it, and it is silent on none." in sentence(shown)


def test_a_material_without_an_inci_name_is_compared_under_its_own(assessed: Any, run: Callable[..., Any]) -> None:
    edit_material(assessed.book, "water", MaterialFacts("water"))
    told = json.loads(run("recipe", "assessment", "plain-bar", "--json").stdout)
    assert told["without_inci"] == ["water"]
    assert ("AQUA", "inside") in [(one["what"], one["verdict"]) for one in told["compared"]]  # water is AQUA
    assert "compared under their own: water." in run("recipe", "assessment", "plain-bar").stdout


@pytest.mark.usefixtures("shop")
def test_without_an_assessment_it_says_how_to_book_one(run: Callable[..., Any]) -> None:
    shown = run("recipe", "assessment", "plain-bar").stdout
    assert shown.startswith("No assessment of Plain Bar is booked")
    assert "soapledger recipe assess plain-bar FILE.toml" in shown
    assert run("recipe", "assessment", "plain-bar", "--json").stdout == "null\n"


def test_what_cannot_be_compared_is_said_in_one_line(assessed: Any, run: Callable[..., Any]) -> None:
    open_batch = planned(assessed.book)
    add_material(assessed.book, MaterialFacts("rose oil", "Rosa Oil"), kind="fragrance", code=None)
    other = PLAIN_BAR.replace("plain-bar", "rose").replace("Plain Bar", "Rose")
    add_recipe(assessed.book, other, file="rose.toml")
    for words, message, code in (
        (("plain-bar", "--market", "uk"), "'uk' is not a market known here", 2),
        (("plain-bar", "--version", "7"), "no version 7", 2),
        (("plain-bar", "--version", "1", "--batch", assessed.batch), "leave out --version", 2),
        (("plain-bar", "--batch", open_batch), f"soapledger batch log {open_batch}", 1),
        (("rose", "--batch", assessed.batch), "was not planned from the recipe Rose", 2),
        (("peony",), "No recipe is called 'peony'", 2),
    ):
        said = run("recipe", "assessment", *words, code=code).stderr
        assert message in said
        assert len(said.splitlines()) == 1
