"""Each market by its own law: what Great Britain cites, what a US soap may carry, what keeps over thirty months."""

import json
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from making import cut
from shop import ADDRESS, PLAIN_BAR, SETUP, Shop

from ledger.errors import BadInput
from ledger.markets import market
from ledger.operations.house.setup import set_up
from ledger.operations.recipe.recipes import add_recipe
from ledger.views.label.label import LabelText, label_text
from ledger.views.label.label_check import label_check

ON = date(2026, 6, 1)


def bars(shop: Shop, wishes: str, head: str = "") -> str:
    """A batch of a recipe that says so of its label."""
    set_up(shop.book, replace(SETUP, addresses={"eu": ADDRESS, "gb": ADDRESS, "us": ADDRESS}))
    text = head + PLAIN_BAR.replace("plain-bar", "other").replace("Plain Bar", "Other") + f"\n[label]\n{wishes}\n"
    add_recipe(shop.book, text, file="other.toml")
    return cut(shop.book, "other")


def label_of(shop: Shop, code: str, where: str) -> LabelText:
    with shop.book.look() as rows:
        return label_text(rows, code, where, on=ON)


def test_great_britain_cites_its_own_instruments() -> None:
    law = market("gb")
    assert all("SI 1987/1538" in rule.source or "retained" in rule.source for rule in law.rules)
    said = [str(one) for one in (law.rules, law.elsewhere, law.unit_prices, law.serious_effect, law.remains)]
    found = [words for system in law.packing for words in system.judge(110_000, [112_000, 109_000]).words]
    assert [one for one in (*said, *found) if "Directive" in one or "European Union" in one] == []
    assert "SI 2006/659 for 110 g with a tolerable error of 5 g" in " ".join(found)


@pytest.mark.parametrize(("wishes", "listed"), [("", ""), ("list_ingredients = true", "OLEA EUROPAEA FRUIT OIL")])
def test_a_us_soap_carries_its_ingredients_whole_where_she_wants_them(shop: Shop, wishes: str, listed: str) -> None:
    code = bars(shop, f'origin = "Made in Ireland"\n{wishes}')
    view = label_of(shop, code, "us-soap")
    assert view.ingredients == (
        ", ".join([listed, "COCOS NUCIFERA OIL", "WATER", "SODIUM HYDROXIDE"]) if listed else ""
    )
    assert view.origin == "Made in Ireland"
    with shop.book.look() as rows:
        (one,) = [
            each
            for each in label_check(rows, code, "us-soap", on=ON).particulars
            if each.particular == "voluntary ingredients"
        ]
    assert (one.found[:4], one.stands) == (("OLEA", "for a person") if listed else ("none", "found"))
    assert "whole and true" in one.says


def test_above_thirty_months_she_says_whether_opening_matters(shop: Shop) -> None:
    code = bars(shop, "opening_matters = false", "best_before_months = 31\n")
    for where in ("eu", "gb"):
        view = label_of(shop, code, where)
        assert (view.best_before, view.after_opening_months) == (None, None)
        with shop.book.look() as rows:
            found = {one.particular: one for one in label_check(rows, code, where, on=ON).particulars}["durability"]
        assert (found.stands, "opening does not matter" in found.found) == ("for a person", True)
    assert label_of(shop, code, "us-soap").best_before is not None  # the thirty months are the EU's and Great Britain's


def test_undecided_is_refused_and_both_are(shop: Shop) -> None:
    code = bars(shop, "", "best_before_months = 31\n")
    with pytest.raises(BadInput, match="opening_matters = false under \\[label\\] in the recipe"):
        label_of(shop, code, "eu")
    both = PLAIN_BAR + "\n[label]\nopening_matters = false\nafter_opening_months = 12\n"
    with pytest.raises(BadInput, match=r"both\.toml, line \d+ \[label\]: opening does not matter, and has a period"):
        add_recipe(shop.book, both, file="both.toml")


@pytest.mark.usefixtures("frozen")
def test_the_check_of_canada_names_the_tag_for_a_narrow_band(shop: Shop, run: Any) -> None:
    set_up(shop.book, replace(SETUP, country="CA", addresses={"ca": ADDRESS}))
    found = json.loads(run("label", "check", shop.batch, "--json").stdout)["particulars"]
    one = {each["particular"]: each for each in found}
    assert one["narrow band"]["stands"] == "for a person"
    assert "ticket or tag" in one["narrow band"]["says"]
    assert one["figure height"]["found"].startswith(
        "3.2 mm at least for the figures, bold; the side that bears the front"
    )
    assert one["letters"]["found"] == "1.6 mm at least"
