"""No bar is supplied in the EU or Great Britain that no assessment and notification cover, unless a person decides."""

import shutil
from datetime import date
from typing import Any

import pytest
from making import LOOKED_GOOD, batch_of, cut, deliver
from shop import PLAIN_BAR, SETUP, Shop, released_before, work_a_shop

from ledger.domain.material.skin_limits import Limit
from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.errors import Refused
from ledger.operations.house.setup import set_up
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.material.skin import state_limit
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.assess import assess_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import find_batch
from ledger.storage.book import Book
from ledger.views.label.supply import supply_doubts
from ledger.views.recipe.skin import batch_skin_checks

PASSED = date(2026, 6, 3)  # cut on 6 May, cured 28 days
# of 1440.478 g: olive 41.7 %, coconut 27.8 %, water 20.4 %, sodium hydroxide 10.2 %
REPORT = """
assessor = "R. Lund"
reference = "QR-9"
on = 2026-01-05
process = ["cold"]
markets = ["eu", "gb"]
superfat = [3, 8]
[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
highest_percent = 45
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 60
[[ingredient]]
inci = "SODIUM HYDROXIDE"
highest_percent = 60
[[ingredient]]
inci = "AQUA"
highest_percent = 60
[[notification]]
market = "eu"
reference = "E-1"
on = 2026-01-06
[[notification]]
market = "gb"
reference = "G-1"
on = 2026-01-06
"""


def pack(book: Book) -> str:
    code = cut(book)
    pass_bars(book, code, Passing(on=PASSED, by="Nuala"))
    return code


@pytest.fixture
def packed(shop: Shop, built: Any) -> str:
    """Ten bars passed for packing."""
    path, code = built("ten bars packed", pack, built("shop", work_a_shop)[0])
    shutil.copyfile(path, shop.book.path)
    return str(code)


def release(shop: Shop, code: str, **more: Any) -> int:
    asked = Releasing(on=PASSED, by="Nuala", bare="a trial", **more, checks=LOOKED_GOOD)
    return released_before(shop.book, code, asked)


def doubts(shop: Shop, code: str) -> tuple[str, ...]:
    with shop.book.look() as rows:
        return tuple(one.words for one in supply_doubts(rows, find_batch(rows, code), on=PASSED).doubts)


def test_without_an_assessment_bars_are_not_released(shop: Shop, packed: str) -> None:
    with pytest.raises(Refused, match="there is no safety assessment of Plain Bar"):
        release(shop, packed)


def test_what_was_assessed_and_notified_is_released(shop: Shop, packed: str) -> None:
    assess_recipe(shop.book, "plain-bar", REPORT, file="report.toml")
    assert doubts(shop, packed) == ()
    assert release(shop, packed) == 10


def test_a_market_without_its_notification_is_named(shop: Shop, packed: str) -> None:
    report = REPORT.replace('[[notification]]\nmarket = "gb"\nreference = "G-1"\non = 2026-01-06\n', "")
    assess_recipe(shop.book, "plain-bar", report, file="report.toml")
    assert doubts(shop, packed) == ("there is no notification for GB",)
    with pytest.raises(Refused, match="there is no notification for GB"):
        release(shop, packed)


def test_a_batch_outside_what_was_assessed_is_not_released(shop: Shop, packed: str) -> None:
    assess_recipe(shop.book, "plain-bar", REPORT.replace("= 45", "= 41"), file="report.toml")
    with pytest.raises(Refused, match=r"OLEA EUROPAEA FRUIT OIL is 41\.65 %, assessed at most 41 %"):
        release(shop, packed)


def test_a_decision_by_name_lets_them_go_and_stays(shop: Shop, packed: str) -> None:
    release(shop, packed, anyway="for the assessor's own trial")
    reason = (
        shop.rows().execute("SELECT reason, by FROM decision WHERE verdict = 'released' ORDER BY id DESC").fetchone()
    )
    assert reason["by"] == "Nuala"
    assert reason["reason"].startswith("not covered by what was assessed (there is no safety assessment")
    assert "released all the same: for the assessor's own trial; no label was printed" in reason["reason"]
    assert reason["reason"].endswith("released bare: a trial")
    gift(shop.book, {packed: 1}, to="a neighbour", on=PASSED)


def test_what_lapses_after_the_release_is_asked_at_every_door(shop: Shop, packed: str) -> None:
    assess_recipe(shop.book, "plain-bar", REPORT, file="report.toml")
    release(shop, packed)
    assess_recipe(
        shop.book, "plain-bar", REPORT.replace("on = 2026-01-05", "on = 2026-01-05\nuntil = 2026-06-01"), file="r"
    )
    add_stall(shop.book, "Quay market")
    add_customer(shop.book, CustomerDetails("The Heron"), kind="shop", code="heron")
    for leave in (
        lambda: gift(shop.book, {packed: 1}, to="a neighbour", on=PASSED),
        lambda: stall_out(shop.book, "Quay market", {packed: 1}, on=PASSED),
        lambda: dispatch(shop.book, "heron", {packed: 1}, on=PASSED, price_minor=400, note=None),
    ):
        with pytest.raises(Refused, match="date is 3 Jun 2026, assessed until 1 Jun 2026"):
            leave()
    release(shop, packed, anyway="the new report is on its way")
    gift(shop.book, {packed: 1}, to="a neighbour", on=PASSED)


def test_who_sells_in_the_united_states_alone_is_not_asked(shop: Shop, packed: str) -> None:
    from dataclasses import replace

    set_up(shop.book, replace(SETUP, addresses={"us": SETUP.addresses["eu"]}))
    assert doubts(shop, packed) == ()
    assert release(shop, packed) == 10


def test_bars_over_a_certificate_that_came_after_the_plan_are_asked_about(shop: Shop) -> None:
    """A certificate of just what the bar holds, and a grain (1 ppm) to each side."""
    add_material(shop.book, MaterialFacts("bay oil", "BAY OIL"), kind="fragrance", code=None)
    deliver(shop.book, DeliveryLine("bay oil", 200_000, "F-1", 2000))
    text = PLAIN_BAR.replace("plain-bar", "bay").replace("Plain Bar", "Bay")
    add_recipe(shop.book, text + '\n[[fragrance]]\nmaterial = "bay oil"\ngrams = 5\n', file="bay.toml")
    code = cut(shop.book, "bay")
    with shop.book.look() as rows:
        (found,) = batch_skin_checks(rows, batch_of(shop.book, code))
    assert found.share_ppm
    for grain, asked in ((-1, True), (0, False), (1, False)):
        limit = Limit(found.share_ppm + grain, f"LATER{grain}", None, "9", date(2026, 5, 7))
        state_limit(shop.book, limit, material="bay oil")
        with shop.book.look() as rows:
            doubts = [one.words for one in supply_doubts(rows, batch_of(shop.book, code), on=date(2026, 6, 8)).doubts]
        assert any("is over the" in words and f"LATER{grain}" in words for words in doubts) is asked
