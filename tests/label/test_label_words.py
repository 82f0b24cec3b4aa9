"""The words of a label by language: the official ones, the hourglass where there are none, and files of her own."""

import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from making import cut
from shop import ADDRESS, PLAIN_BAR, SETUP, Shop

from ledger.documents.kit.layout import label_layout
from ledger.documents.label.labels import set_label
from ledger.domain.label.words import Words, batch_word, said, until, untranslated
from ledger.errors import BadInput
from ledger.operations.house.setup import set_up
from ledger.operations.recipe.recipes import add_recipe
from ledger.reference.label_words import label_words, spoken
from ledger.reference.shipped import templates
from ledger.views.label.label import label_text

ON = date(2026, 6, 1)
# Art 19(1)(c) of Regulation (EC) 1223/2009, by language; read, or read in a secondary text.
OFFICIAL = {
    "en": "Best used before the end of November 2028",
    "de": "Mindestens haltbar bis November 2028",
    "fr": "À utiliser de préférence avant fin novembre 2028",
    "es": "Utilícese preferentemente antes del final de noviembre de 2028",
    "it": "Usare preferibilmente entro novembre 2028",
    "pl": "Najlepiej zużyć przed końcem listopada 2028",
    "sv": "Bäst före utgången av november 2028",
    "da": "Bør anvendes inden udgangen af november 2028",
    "sk": "Najlepšie spotrebovať do novembra 2028",
}


def mine(change: tuple[str, str], folder: Path, name: str = "words-nl.toml") -> Path:
    """A file of hers, copied from the Dutch of nobody: the German one, changed in one place."""
    text = (templates() / "words-de.toml").read_text(encoding="utf-8").replace('"de"', '"nl"')
    assert change[0] in text
    (folder / name).write_text(text.replace(*change), encoding="utf-8")
    return folder / name


@pytest.mark.parametrize("language", sorted(OFFICIAL))
def test_the_words_are_the_official_ones(language: str) -> None:
    assert until(label_words(language), 11, 2028) == (OFFICIAL[language], False)


def test_every_shipped_language_is_among_them_with_its_source() -> None:
    assert set(spoken()) == set(OFFICIAL)
    for language in spoken():
        (words,) = label_words(language)
        assert words.source.startswith("read")
        assert len(set(words.months)) == 12


@pytest.mark.parametrize("language", ["nl", "pt", "fi", "cs", "hu", "ro", "el", "nl en"])
def test_where_the_words_are_not_known_figures_stand_behind_the_hourglass(language: str) -> None:
    assert until(label_words(language), 1, 2029) == ("01/2029", True)
    assert batch_word(label_words(language)) == ""


def test_two_languages_stand_side_by_side() -> None:
    words = label_words("en fr")
    assert until(words, 4, 2028) == (
        "Best used before the end of April 2028 / À utiliser de préférence avant fin avril 2028",
        False,
    )
    assert said(words, "Soap") == "Soap / Savon"
    assert said(words, "Made in Ireland") == "Made in Ireland / Fabriqué en Irlande"
    assert said(words, "Made in Canada") == "Made in Canada / Fabriqué au Canada"
    assert batch_word(words) == "Batch / Lot"
    assert untranslated(words, ("Soap", "Keep dry.")) == ("'Keep dry.' in French (fr)",)
    assert said((Words("nl"),), "Soap") == "Soap"


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (('best_before = "mindestens haltbar bis"', ""), "best_before is missing"),
        (('"Januar", ', ""), "months are the twelve names in their order; here are 11"),
        (("months = [", "months = 7\nbatches = ["), "'batches' is not known here"),
        (('"{month} {year}"', '"{month}"'), "date says where month and year stand"),
        (('source = "read: the German federal office (BVL)"', ""), "source is missing"),
        (('language = "nl"', 'language = "de"'), "language is nl, as in its name, not 'de'"),
        (('what = "words"', 'what = "label"'), "this file holds no words of a label"),
        (('name = "German"', "name = "), "the file cannot be read"),
        (('is = "Seife"', ""), "is is missing"),
    ],
)
def test_a_file_that_is_not_whole_is_one_clear_line(change: tuple[str, str], why: str, tmp_path: Path) -> None:
    mine(change, tmp_path)
    with pytest.raises(BadInput) as caught:
        label_words("nl", tmp_path)
    assert str(caught.value).startswith("words-nl.toml")
    assert why in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(("typed", "why"), [("dutch", "two letters, such as de"), ("no.toml", "no file no.toml")])
def test_what_is_no_language_says_what_one_is(typed: str, why: str) -> None:
    with pytest.raises(BadInput, match=why):
        label_words(typed)


LANGUAGES: list[tuple[str, str, str, str]] = [
    ("IE", "eu", "en", "Best used before"),
    ("DE", "eu", "de", "Mindestens haltbar bis September 2028"),
    ("NL", "eu", "nl", "09/2028"),
    ("BE", "eu", "", "09/2028"),  # what Belgium asks for is not known here
    ("DE", "gb", "en", "Best used before"),
    ("DE", "us-soap", "en", "Best used before"),
    ("CA", "ca", "en fr", "Best used before the end of September 2028 / À utiliser"),
]


def test_the_language_is_that_of_the_market_or_of_her_country_in_it(shop: Shop) -> None:
    """Made on 6 May 2026, 29 months are up in October 2028."""
    code = cut_of(shop)
    for country, where, languages, begins in LANGUAGES:
        set_up(shop.book, replace(SETUP, country=country, addresses=dict.fromkeys(("eu", "gb", "us", "ca"), ADDRESS)))
        with shop.book.look() as rows:
            view = label_text(rows, code, where, on=ON, best_before_months=29)
        assert (view.languages, view.hourglass) == (languages, begins == "09/2028")
        assert (view.best_before or "").startswith(begins)
        assert view.ingredients_heading.casefold().startswith("ingredients")  # never translated


def cut_of(shop: Shop) -> str:
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "said").replace("Plain Bar", "Said"), file="said.toml")
    return cut(shop.book, "said")


@pytest.mark.usefixtures("frozen")
def test_print_check_and_approve_speak_the_language_asked_for(shop: Shop, run: Any, read: Any) -> None:
    """Printed: the German words; the hourglass and figures in Dutch, until a file of hers lies beside the ledger."""
    told = run("label", "approve", shop.batch, "--market", "eu", "--language", "de").stdout
    assert "Mindestens haltbar bis März 2028" in told
    assert "--market eu --language de -o labels.pdf" in " ".join(told.split())
    assert "Nobody approved" in run("label", "print", shop.batch, "--market", "eu", "-o", "l.pdf", code=1).stderr
    told = run("label", "print", shop.batch, "--market", "eu", "--language", "de", "-o", "l.pdf").stdout
    assert "Its words are in German (de); for another: --language" in " ".join(told.split())
    page = read(Path("l.pdf").read_bytes()).text(0)
    for words in ("Seife", "Mindestens haltbar bis März 2028", "Charge " + shop.batch, "Ingredients: OLEA"):
        assert words in page
    dutch = ("--market", "eu", "--language", "nl")
    assert "(hourglass) 03/2028" in run("label", "approve", shop.batch, *dutch).stdout
    told = run("label", "print", shop.batch, *dutch, "-o", "nl.pdf").stdout
    assert "No words for the date are known here in nl, so the hourglass stands before it" in " ".join(told.split())
    page = read(Path("nl.pdf").read_bytes()).text(0)
    assert "03/2028" in page
    assert "Best used" not in page
    found = json.loads(run("label", "check", shop.batch, *dutch, "--json").stdout)["particulars"]
    (one,) = [each for each in found if each["particular"] == "language"]
    assert one["stands"] == "for a person"
    assert "no words for 'Soap' in nl" in one["found"]
    assert "DE de" in one["says"]
    assert "NL nl" in one["says"]
    german = json.loads(run("label", "check", shop.batch, "--market", "eu", "--language", "de", "--json").stdout)
    (one,) = [each for each in german["particulars"] if each["particular"] == "language"]
    assert one["stands"] == "found"
    assert "those for the date: German (de), read: the German federal office (BVL)" in one["found"]
    mine(('best_before = "mindestens haltbar bis"', 'best_before = "houdbaar tot einde"'), Path())
    assert "Houdbaar tot einde März 2028" in run("label", "approve", shop.batch, *dutch).stdout
    failed = run("label", "check", shop.batch, "--market", "eu", "--language", "klingon", code=2).stderr
    assert len(failed.splitlines()) == 1


@pytest.mark.parametrize(("hourglass", "marks"), [(True, 1), (False, 0)])
@pytest.mark.parametrize("layout", ["small", "band", "box", "round", "wrap"])
def test_the_hourglass_is_drawn_before_the_figures_on_every_layout(
    label: Any, layout: str, hourglass: bool, marks: int
) -> None:
    view = replace(label, best_before="04/2028", hourglass=hourglass)
    drawn = [one for panel in set_label(view, label_layout(layout))[1] for one in panel.figures]
    assert sum(one.figure.field == "best_before" for one in drawn) == marks
