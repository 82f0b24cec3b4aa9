"""Labels at their limits: months, the country of the packers' rule, the highest weight, runs of other markets."""

from dataclasses import replace
from datetime import date

import pytest
from bare_ledger import BareLedger
from making import cut
from shop import PLAIN_BAR, SETUP, Shop

from ledger.domain.label.net_quantity import Net
from ledger.operations.house.setup import set_up
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.lots import decide_lots
from ledger.rows.label import run_by_number, runs, text_of
from ledger.storage.tables.label import LabelRun
from ledger.storage.tables.reading import Reading
from ledger.views.label.label import label_text
from ledger.views.label.label_check import label_check
from ledger.views.label.net import net_doubts

ON = date(2026, 6, 1)


def test_up_to_thirty_months_a_date_and_above_the_period_after_opening(shop: Shop) -> None:
    """Made on 6 May 2026; 30 months later it is 6 November 2028, and the last month that ends by then is October."""
    wishes = "\n[label]\nafter_opening_months = 12\n"
    text = PLAIN_BAR.replace("plain-bar", "opened").replace("Plain Bar", "Opened") + wishes
    add_recipe(shop.book, text, file="opened.toml")
    code = cut(shop.book, "opened")
    with shop.book.look() as rows:
        for months, dated, opened in (
            (29, "Best used before the end of September 2028", None),
            (30, "Best used before the end of October 2028", None),
            (31, None, 12),
        ):
            view = label_text(rows, code, "eu", on=ON, best_before_months=months)
            assert (view.best_before, view.after_opening_months) == (dated, opened)


def test_a_label_of_bars_on_hold_is_a_draft(shop: Shop) -> None:
    with shop.book.look() as rows:
        assert not label_text(rows, shop.batch, "eu", on=ON).draft
    decide_lots(shop.book, [shop.batch], verdict="on hold", on=ON, by="Nuala", reason="a doubt")
    with shop.book.look() as rows:
        assert label_text(rows, shop.batch, "eu", on=ON).draft


def weigh_five(shop: Shop) -> None:
    """Five bars of 130 g at packing; at the cut ten weighed 1320 g together."""
    with shop.book.write("batch log") as tx:
        for _ in range(5):
            tx.add(Reading(batch_id=1, on=date(2026, 5, 5), what="bar weight", value=130_000, unit="mg"))
        tx.say("Weighed.")


def test_how_few_bars_may_be_light_is_the_rule_of_her_country(shop: Shop) -> None:
    """SI 2006/659: 2.5 % of a batch; the packers' rules of Germany: 2 % (both read)."""
    weigh_five(shop)
    for country, share in (("DE", "2 %"), ("IE", "2.5 %"), ("GB", "2.5 %")):
        set_up(shop.book, replace(SETUP, country=country))
        with shop.book.look() as rows:
            said = " ".join(label_check(rows, shop.batch, "eu", on=ON).net)
        assert f"where at most {share} may" in said


@pytest.mark.parametrize(("grams", "doubted"), [(104, False), (105, False), (106, True)])
def test_the_highest_weight_itself_may_be_declared(shop: Shop, grams: int, doubted: bool) -> None:
    """Of 1440.478 g that went in 293.652 g are water (see test_cure): 1146.826 of 1440.478 are left when quite dry.

    A bar of 132.000 g at the cut comes to 105.090 g, so 105 g is the highest whole gram.
    """
    weigh_five(shop)
    with shop.book.look() as rows:
        view = label_text(rows, shop.batch, "eu", on=ON, net=Net(grams * 1000))
        assert bool(net_doubts(rows, view)) is doubted


def test_a_check_lists_the_runs_of_its_own_market_alone(shop: Shop) -> None:
    with shop.book.write("label print") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.batch,)).fetchone()[0]
        for market in ("eu", "gb"):
            row = LabelRun(lot_id=lot, on=ON, layout="band", market=market, count=10, text="", text_digest="0" * 64)
            tx.add(row)
        tx.say("Printed.")
    with shop.book.look() as rows:
        found = {market: label_check(rows, shop.batch, market, on=ON).runs for market in ("eu", "gb")}
    assert {market: [one.number for one in each] for market, each in found.items()} == {"eu": [1], "gb": [2]}


def test_a_text_is_as_old_as_the_run_that_was_first_printed_of_it_and_the_latest_count_holds() -> None:
    """Printed on 2 March, again on the 5th, and that again on the 9th; the first was counted twice."""
    ledger = BareLedger()
    _, (bars,) = ledger.make("cold", [ledger.buy("A")])
    for on, of in (("2026-03-02", None), ("2026-03-05", 1), ("2026-03-09", 2)):
        printed = {"layout": "band", "market": "eu", "count": 10, "text": "", "text_digest": "0" * 64}
        ledger.add("label_run", lot_id=bars, on=on, reprint_of=of, **printed)
    for used in (9, 7):
        ledger.add("label_count", label_run_id=1, on="2026-03-10", used=used, spoiled=10 - used, returned=0)
    ledger.close()
    ages = [text_of(ledger.rows, run_by_number(ledger.rows, number)) for number in (1, 2, 3)]
    assert ages == [date(2026, 3, 2)] * 3
    assert [one.used for one in runs(ledger.rows)] == [7, None, None]
