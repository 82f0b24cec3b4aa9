"""An ingredient that the report does not name: matched by other names, else outside until the assessor writes of it."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from freezegun import freeze_time
from making import CHECKED, cut, deliver
from shop import ADDRESS, PLAIN_BAR, SETUP, Shop

from ledger.domain.release.bars import Passing
from ledger.errors import BadInput, Refused
from ledger.operations.house.setup import set_up
from ledger.operations.keep.check import check
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe, revise_recipe
from ledger.operations.record.word import Word, add_word
from ledger.operations.release.assess import assess_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.recipe import recipe_by_code
from ledger.views.release.assessment import recipe_beside

TODAY = date(2026, 6, 1)
HEAD = """
assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
process = ["cold"]
markets = ["eu", "gb"]
"""
NOTIFIED = "".join(f'[[notification]]\nmarket = "{one}"\nreference = "N-7"\non = 2026-03-10\n' for one in ("eu", "gb"))


def report(*names: str) -> str:
    return HEAD + "".join(f'[[ingredient]]\ninci = "{one}"\nhighest_percent = 60\n' for one in names) + NOTIFIED


RAW = ("OLEA EUROPAEA FRUIT OIL", "COCOS NUCIFERA OIL", "SODIUM HYDROXIDE", "AQUA")
SOAPS = ("Sodium Olivate", "Sodium Cocoate", "Aqua", "Glycerin")
WITH_CLAY = PLAIN_BAR + '\n[[additive]]\nmaterial = "white clay"\npercent_of_fats = 1\n'


@pytest.fixture
def later() -> Iterator[None]:
    """Three days on, when the bars of a batch made on 6 May are packed."""
    with freeze_time("2026-06-04 09:00:00"):
        yield


def unnamed(shop: Shop, code: str = "plain-bar") -> list[str]:
    with shop.book.look() as rows:
        view = recipe_beside(rows, recipe_by_code(rows, code), on=TODAY)
    assert view
    assert all(one.verdict == "outside" for one in view.compared if one.unnamed)
    return [one.what for one in view.compared if one.unnamed]


def put_clay(shop: Shop) -> None:
    add_material(shop.book, MaterialFacts("white clay", "Kaolin"), kind="additive", code=None)
    deliver(shop.book, DeliveryLine("white clay", 1_000_000, "W-1", 100))
    revise_recipe(shop.book, "plain-bar", WITH_CLAY, file="plain-bar.toml")


@pytest.mark.parametrize(
    ("names", "left"),
    [
        (RAW, []),
        (("Olea Europaea (Olive) Fruit Oil", "Cocos Nucifera (Coconut) Oil", "Sodium Hydroxide", "Water"), []),
        (SOAPS, []),  # a report as saponified: the lye is in the soaps it names
        (RAW[:2] + RAW[3:], ["SODIUM HYDROXIDE"]),
        (RAW[:1] + RAW[2:], ["COCOS NUCIFERA OIL"]),
    ],
)
def test_a_report_names_an_ingredient_by_more_than_one_name(
    shop: Shop, names: tuple[str, ...], left: list[str]
) -> None:
    assess_recipe(shop.book, "plain-bar", report(*names), file="r.toml")
    assert unnamed(shop) == left
    assert check(shop.rows()).findings == ()


def test_a_match_is_kept_with_the_report(shop: Shop) -> None:
    put_clay(shop)
    text = report(*RAW, "China Earth")
    assess_recipe(shop.book, "plain-bar", text, file="r.toml")
    assert unnamed(shop) == ["KAOLIN"]
    assess_recipe(shop.book, "plain-bar", text, file="r.toml", same={"kaolin": "china earth"})
    assert unnamed(shop) == []
    kept = shop.rows().execute("SELECT inci, named FROM assessment_covers").fetchall()
    assert [tuple(one) for one in kept] == [("KAOLIN", "CHINA EARTH")]
    with pytest.raises(BadInput, match="CHINA CLAY is no name of the report"):
        assess_recipe(shop.book, "plain-bar", text, file="r.toml", same={"kaolin": "China Clay"})


def test_only_the_assessors_written_word_lifts_it(shop: Shop) -> None:
    """10 g of 1450 g are 0.69 %: at most 0.7 % of it holds them, 0.6 % does not."""
    put_clay(shop)
    assess_recipe(shop.book, "plain-bar", report(*RAW), file="r.toml")
    word = Word("Kaolin", 7_000, "R. Lund", date(2026, 5, 20), "letter: up to 0.7 % of kaolin is covered")
    with pytest.raises(Refused, match=r"is of R\. Lund, and only that assessor's word adds to it"):
        add_word(shop.book, "plain-bar", word._replace(by="Nuala"), today=TODAY)
    with pytest.raises(BadInput, match="Keep the words themselves"):
        add_word(shop.book, "plain-bar", word._replace(text=" "), today=TODAY)
    with pytest.raises(BadInput, match="a word on it cannot be of before"):
        add_word(shop.book, "plain-bar", word._replace(on=date(2026, 3, 2)), today=TODAY)
    with pytest.raises(BadInput, match="has not come yet"):
        add_word(shop.book, "plain-bar", word._replace(on=date(2026, 6, 2)), today=TODAY)
    assert unnamed(shop) == ["KAOLIN"]
    add_word(shop.book, "plain-bar", word, today=TODAY)
    assert unnamed(shop) == []
    add_word(shop.book, "plain-bar", word._replace(highest_ppm=6_000), today=TODAY)
    with shop.book.look() as rows:
        view = recipe_beside(rows, recipe_by_code(rows, "plain-bar"), on=TODAY)
    assert view
    assert [one.verdict for one in view.compared if one.what == "KAOLIN"] == ["outside"]
    assess_recipe(shop.book, "plain-bar", report(*RAW), file="r.toml")
    assert unnamed(shop) == ["KAOLIN"]  # the word was on the report before


@pytest.mark.usefixtures("frozen", "later")
def test_her_own_decision_lets_no_bar_out_that_holds_it(shop: Shop, run: Any) -> None:
    put_clay(shop)
    assess_recipe(shop.book, "plain-bar", report(*RAW), file="r.toml")
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    words = ("release", code, "--on", "2026-06-04", "--anyway", "a trial", "--bare", "a trial", *CHECKED)
    refused = run(*words, code=1).stderr
    assert f"Batch {code} holds what its assessment does not name: KAOLIN is 0.69 %, assessed not named." in refused
    assert "soapledger recipe word plain-bar INCI" in refused
    Path("letter.pdf").write_bytes(b"%PDF-1.4 kaolin is covered")
    said = run(
        *("recipe", "word", "plain-bar", "kaolin", "--up-to", "1%", "--by", "R. Lund"),
        *("--on", "2026-05-20", "--paper", "letter.pdf"),
    ).stdout
    assert "The word of R. Lund, 20 May 2026, on KAOLIN is kept" in said
    shown = " ".join(run("recipe", "assessment", "plain-bar").stdout.split())
    assert "KAOLIN: 1.00 % at most, by the word of R. Lund, 20 May 2026: letter.pdf, SHA-256" in shown
    run(*words)


@pytest.mark.usefixtures("frozen", "later")
def test_where_a_market_asks_for_no_assessment_a_person_decides(shop: Shop, run: Any) -> None:
    set_up(shop.book, replace(SETUP, addresses={"eu": ADDRESS, "us": ADDRESS}))
    put_clay(shop)
    assess_recipe(shop.book, "plain-bar", report(*RAW), file="r.toml")
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    words = ("release", code, "--on", "2026-06-04", "--bare", "a trial", *CHECKED)
    assert "KAOLIN is 0.69 %, assessed not named" in run(*words, code=1).stderr
    run(*words, "--anyway", "for the fair over there alone")


def test_a_report_covers_the_recipes_it_names(shop: Shop) -> None:
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "twin").replace("Plain Bar", "Twin"), file="t.toml")
    two = report(*RAW).replace("markets", 'recipes = ["plain-bar", "twin"]\nmarkets')
    assess_recipe(shop.book, "plain-bar", two, file="r.toml")
    assert [unnamed(shop, one) for one in ("plain-bar", "twin")] == [[], []]
    with pytest.raises(BadInput, match="The report covers twin, and not plain-bar"):
        assess_recipe(shop.book, "plain-bar", two.replace('"plain-bar", ', ""), file="r.toml")


@pytest.mark.usefixtures("frozen")
def test_a_revision_keeps_the_assessment_or_it_is_said(shop: Shop, run: Any, tmp_path: Path) -> None:
    assess_recipe(shop.book, "plain-bar", report(*RAW), file="r.toml")
    add_material(shop.book, MaterialFacts("white clay", "Kaolin"), kind="additive", code=None)
    (tmp_path / "p.toml").write_text(PLAIN_BAR.replace("superfat = 5", "superfat = 6"))
    said = " ".join(run("recipe", "revise", "plain-bar", "p.toml").stdout.split())
    assert "It lies inside assessment QR-114 of R. Lund in all that was compared" in said
    (tmp_path / "p.toml").write_text(WITH_CLAY)
    said = " ".join(run("recipe", "revise", "plain-bar", "p.toml").stdout.split())
    assert "Outside assessment QR-114 of R. Lund: KAOLIN 0.69 % (assessed: not named)." in said


@pytest.mark.usefixtures("frozen")
def test_it_is_asked_at_the_booking_or_told_by_a_word(shop: Shop, run: Any, tmp_path: Path) -> None:
    put_clay(shop)
    (tmp_path / "r.toml").write_text(report(*RAW, "China Earth"))
    said = run("recipe", "assess", "plain-bar", "r.toml", input="chalk\nchina earth\n")
    assert "CHALK is no name of the report" in said.stderr
    assert unnamed(shop) == []
    said = run("recipe", "assess", "plain-bar", "r.toml", input="\n")
    assert "KAOLIN in Plain Bar is not named in it" in " ".join(said.stdout.split())
    assert unnamed(shop) == ["KAOLIN"]
    run("recipe", "assess", "plain-bar", "r.toml", "--same", "KAOLIN=China Earth")
    assert unnamed(shop) == []
    assert "write --same" in run("recipe", "assess", "plain-bar", "r.toml", "--same", "KAOLIN", code=2).stderr
