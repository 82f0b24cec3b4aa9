"""Bars at a shop on sale or return go by every door that others go by: labels, holds, complaints, counts, pages."""

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from freezegun import freeze_time
from making import LOOKED_GOOD, cut
from once import once
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.errors import Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.label.bare import Bare, settle_bare
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.resell import resell
from ledger.operations.shop.back import back_from_shop
from ledger.operations.shop.terms import Agreed, agree
from ledger.rows.batch import find_batch
from ledger.rows.history import last_entry
from ledger.views.label.bare import bars_without

pytestmark = pytest.mark.usefixtures("frozen")
PASSED, OUT = date(2026, 6, 3), date(2026, 5, 12)


@pytest.fixture
def hall(shop: Shop) -> Shop:
    once(agreed)(shop)
    return shop


def agreed(shop: Shop) -> None:
    """A shop on sale or return."""
    add_customer(shop.book, CustomerDetails("Tern Hall"), kind="shop", code="tern-hall")
    agree(shop.book, "tern-hall", Agreed(consignment=True), on=date(2026, 5, 1))


@pytest.fixture
def six(hall: Shop) -> Shop:
    """Six of the ten bars stand there."""
    once(bring_six)(hall)
    return hall


def bring_six(shop: Shop) -> None:
    bring(shop, shop.batch, 6)


def bring(shop: Shop, code: str, bars: int, on: date = OUT) -> None:
    dispatch(shop.book, "tern-hall", {code: bars}, on=on, price_minor=None, note=None)


def without(shop: Shop, code: str) -> int:
    return bars_without(shop.rows(), find_batch(shop.rows(), code))


def test_bars_without_a_label_go_only_where_that_is_settled(hall: Shop) -> None:
    """Ten bare bars: four go to the shop, six are left; two that are put back on sale may be bare again."""
    code = cut(hall.book)
    pass_bars(hall.book, code, Passing(on=PASSED, by="Nuala"))
    told = Releasing(on=PASSED, by="Nuala", anyway="a trial", checks=LOOKED_GOOD, bare="sold from the tray")
    release_bars(hall.book, code, told)
    with pytest.raises(Refused, match="soapledger label bare plain-bar --to tern-hall"):
        bring(hall, code, 1, PASSED)
    asked = Bare("plain-bar", None, "tern-hall", PASSED, "Nuala", "on a tray there")
    settle_bare(hall.book, asked, notice="notice-shelf", code_on="tray")
    settled = last_entry(hall.rows())
    bring(hall, code, 4, PASSED)
    assert without(hall, code) == 6
    with pytest.raises(Refused, match="depends on it"):
        undo(hall.book, settled)
    back_from_shop(hall.book, "tern-hall", {code: 2}, on=PASSED)
    assert without(hall, code) == 6
    resell(hall.book, {code: 2}, on=PASSED, by="Orla", reason="seal unbroken")
    assert without(hall, code) == 8
    assert check(hall.rows()).findings == ()


def test_a_recall_holds_them_there_and_their_sale_is_still_booked(six: Shop, run: Callable[..., Any]) -> None:
    run("recall", "open", "--bar", six.batch, "--reason", "a doubt")
    with freeze_time("2026-06-02 09:00:00"):
        told = run("consignment", "count", "tern", "plain=2", "--price", "6.50")
    assert f"Bars of batch {six.batch}, which is on hold, were sold" in told.stderr
    assert json.loads(run("recall", "show", "R1", "--json").stdout)["answer"]["totals"]["at_shop"] == 2
    run("consignment", "back", "tern", "plain=2")
    assert "nothing is wrong" in run("check").stdout


def test_a_complaint_from_there_finds_the_batch(six: Shop, run: Callable[..., Any]) -> None:
    told = run("complaint", "add", "itched", "--at", "tern-hall")
    assert six.batch in told.stdout + told.stderr


def test_bars_missing_there_may_be_counted_off_without_a_count_of_the_shop(six: Shop, run: Callable[..., Any]) -> None:
    run("lot", "count", six.batch, "5", "--at", "tern-hall", "--yes")
    assert json.loads(run("consignment", "list", "--json").stdout)[0]["bars"] == 5


def test_the_record_and_the_lot_tell_of_them(six: Shop, run: Callable[..., Any]) -> None:
    assert "at a shop" in run("batch", "show", six.batch).stdout
    assert "Tern Hall" in run("lot", "show", six.batch).stdout


def test_a_shop_that_changes_its_name_is_called_by_it(six: Shop, run: Callable[..., Any]) -> None:
    run("customer", "edit", "tern-hall", "--name", "Tern House")
    for words in (("stock", "--kind", "soap"), ("consignment", "list"), ("recall", "bar", six.batch)):
        shown = run(*words).stdout
        assert "Tern House" in shown
        assert "Tern Hall" not in shown


@pytest.mark.parametrize("kind", ["shop", "person"])
def test_a_place_does_not_keep_the_name_of_a_person(shop: Shop, kind: Any) -> None:
    add_customer(shop.book, CustomerDetails("Orla Fenn"), kind=kind, code=None)
    code = shop.rows().execute("SELECT code FROM customer").fetchone()[0]
    agree(shop.book, code, Agreed(consignment=True), on=OUT)
    (name,) = shop.rows().execute("SELECT name FROM place WHERE kind = 'consignment'").fetchone()
    assert (name == "Orla Fenn") is (kind == "shop")


@pytest.mark.usefixtures("six")
def test_an_archive_tells_of_them_and_a_customer_s_page_what_is_agreed_promised_and_invoiced(
    run: Callable[..., Any], tmp_path: Path
) -> None:
    run("order", "add", "tern", "plain=5", "--due", "fri")
    run("consignment", "count", "tern", "plain=2", "--price", "6.50")
    run("invoice", "make", "tern", "--yes")
    run("archive", "kept")
    index = (tmp_path / "kept" / "pages" / "index.html").read_text(encoding="utf-8")
    assert "Stalls and shops" in index
    assert "Tern Hall" in index
    page = (tmp_path / "kept" / "pages" / "customer-tern-hall.html").read_text(encoding="utf-8")
    for words in ("sale or return, from 1 May 2026 on", "not theirs", "Promised", "5 Jun 2026", "Invoices", "26.00"):
        assert words in page
    run("archive", "kept", "--check")
