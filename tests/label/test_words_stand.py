"""Questioned words are decided once by name at the approval, and again only when the words change."""

from datetime import date
from typing import Any

import pytest
from freezegun import freeze_time
from making import cut
from shop import PLAIN_BAR, Shop

from ledger.domain.release.bars import Passing
from ledger.operations.keep.check import check
from ledger.operations.recipe.recipes import revise_recipe
from ledger.operations.release.release import pass_bars

pytestmark = pytest.mark.usefixtures("frozen")


def passed(shop: Shop, label: str) -> str:
    """Bars of a recipe with that label, passed for packing."""
    revise_recipe(shop.book, "plain-bar", f"{PLAIN_BAR}\n[label]\n{label}\n", file="p.toml")
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    return code


def test_words_are_decided_once_and_again_when_they_change(shop: Shop, run: Any) -> None:
    with freeze_time("2026-06-04 09:00:00"):
        first = passed(shop, 'function = "Heilende Seife"')
        refused = run("label", "approve", first, "--market", "eu", code=1)
        assert "'Heilende': Said of an illness" in refused.stderr
        assert "The label says 'Heilende', which a person decides first" in refused.stderr
        run("--as", "Orla", "label", "approve", first, "--market", "eu", input="the name of our street\n")
        kept = shop.rows().execute("SELECT market, questioned, reason, by FROM label_words").fetchall()
        assert [tuple(one) for one in kept] == [("eu", "'Heilende'", "the name of our street", "Orla")]
        said = " ".join(run("label", "check", first, "--market", "eu").stdout.split())
        assert "Orla let these words stand on 4 Jun 2026: the name of our street" in said
        second = passed(shop, 'function = "Heilende Seife"\norigin = "Made in Ireland"')
        run("label", "approve", second, "--market", "eu")  # the same words, of other bars
        third = passed(shop, 'function = "Heilende Seife"\nprecautions = ["Beugt vor."]')
        run("label", "approve", third, "--market", "eu", code=1)
        run("label", "approve", third, "--market", "eu", "--stand", "a trial")
        run("label", "approve", third, "--market", "gb", code=1)  # another market is another question
        assert check(shop.rows()).findings == ()


def test_words_that_nobody_questions_are_approved_as_before(shop: Shop, run: Any) -> None:
    with freeze_time("2026-06-04 09:00:00"):
        run("label", "approve", passed(shop, 'function = "Soap of the healthy oak"'), "--market", "eu")
        assert shop.rows().execute("SELECT count(*) FROM label_words").fetchone()[0] == 0
