"""Bars that came back are put on sale again by name, with a reason; every count follows them."""

import json
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from once import once
from pypdf import PdfReader
from shop import Shop

from ledger.errors import BadInput, Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.resell import resell
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import decide_lots
from ledger.rows.history import last_entry
from ledger.rows.lot import find_lot, whereabouts
from ledger.storage.personal import PersonDetails

BACK, DAY = date(2026, 5, 20), date(2026, 5, 22)

pytestmark = pytest.mark.usefixtures("frozen")


@pytest.fixture
def returned(shop: Shop) -> Shop:
    once(come_back)(shop)
    return shop


def come_back(shop: Shop) -> None:
    """Of ten bars five went to a shop and three of them came back: 5 in the workshop, 3 on the shelf, 2 there."""
    details = CustomerDetails("Tern Hall", PersonDetails(phone="020 910 0177"))
    add_customer(shop.book, details, kind="shop", code="tern-hall")
    dispatch(shop.book, "tern-hall", {shop.batch: 5}, on=date(2026, 5, 12), price_minor=None, note=None)
    take_back(shop.book, {shop.batch: 3}, customer="tern-hall", stall=None, on=BACK, reason="too many")


def put_back(shop: Shop, bars: int, *, on: date = DAY) -> None:
    resell(shop.book, {shop.batch: bars}, on=on, by="Orla Penhallow", reason="seal unbroken")


def here(shop: Shop) -> dict[str, int]:
    rows = shop.rows()
    return {place.kind: held for place, held in whereabouts(rows, find_lot(rows, shop.batch).id)}


def test_they_go_from_the_shelf_to_where_bars_for_sale_stand(returned: Shop) -> None:
    put_back(returned, 2)
    assert here(returned) == {"workshop": 7, "returns": 1}
    dispatch(returned.book, "tern-hall", {returned.batch: 7}, on=DAY, price_minor=None, note=None)
    assert check(returned.rows()).findings == ()


def test_all_but_no_more_than_are_on_the_shelf(returned: Shop) -> None:
    with pytest.raises(Refused, match=r"3 bars of batch .* stand on the returns shelf; 4 cannot go back on sale"):
        put_back(returned, 4)
    with pytest.raises(Refused, match="0 bars of batch"):
        put_back(returned, 1, on=date(2026, 5, 19))  # the day before they came back
    with pytest.raises(BadInput, match="above zero"):
        put_back(returned, 0)
    put_back(returned, 3, on=BACK)
    assert here(returned) == {"workshop": 8}


def test_what_goes_back_on_sale_later_is_not_on_the_shelf_for_an_earlier_day(returned: Shop) -> None:
    """Three stood on the shelf on 20 May, and two of them only until 22 May."""
    put_back(returned, 2)
    with pytest.raises(Refused, match=r"1 bar of batch .* stands on"):
        put_back(returned, 2, on=BACK)
    put_back(returned, 1, on=BACK)
    assert here(returned) == {"workshop": 8}


@pytest.mark.parametrize("verdict", ["on hold", "rejected"])
def test_only_bars_that_may_be_sold_on_that_day_go_back(returned: Shop, verdict: str) -> None:
    decide_lots(returned.book, [returned.batch], verdict=verdict, on=DAY, by="Nuala", reason="orange spots")
    with pytest.raises(Refused, match=f"are {verdict} on 22 May 2026; only released bars go back on sale"):
        put_back(returned, 1)
    put_back(returned, 1, on=date(2026, 5, 21))  # the day before, when they were released still
    assert here(returned) == {"workshop": 6, "returns": 2}


def test_who_decided_and_why_are_asked_for(returned: Shop) -> None:
    for by, reason in ((" ", "seal unbroken"), ("Orla Penhallow", " ")):
        with pytest.raises(BadInput, match="--by NAME" if reason.strip() else "--reason"):
            resell(returned.book, {returned.batch: 1}, on=DAY, by=by, reason=reason)


def test_an_undo_puts_them_back_on_the_shelf_unless_they_were_sold(returned: Shop) -> None:
    put_back(returned, 2)
    undo(returned.book, last_entry(returned.rows()))
    assert here(returned) == {"workshop": 5, "returns": 3}
    put_back(returned, 2)
    number = last_entry(returned.rows())
    dispatch(returned.book, "tern-hall", {returned.batch: 6}, on=DAY, price_minor=None, note=None)
    with pytest.raises(Refused, match=r"dispatched 6 bars of Plain Bar 26-001-4 to Tern Hall.* depend on it"):
        undo(returned.book, number)


def test_every_answer_shows_them_and_the_sum_holds(returned: Shop, run: Callable[..., Any]) -> None:
    """Made 10 = workshop 5 + 2, shelf 3 - 2, shop 5 - 3."""
    shown = run(
        "resell", f"{returned.batch}=2", "--by", "Orla Penhallow", "--reason", "seal unbroken", "--on", "2026-05-22"
    ).stdout
    assert shown.startswith(f"2 bars of Plain Bar {returned.batch}: back on sale, as Orla Penhallow decided.")
    answer = json.loads(run("recall", "bar", returned.batch, "--json").stdout)
    totals = answer["totals"]
    assert (totals["made"], totals["on_hand"], totals["returned"], totals["dispatched"]) == (10, 7, 1, 2)
    assert totals["unexplained"] == 0
    assert sum(one["count"] for one in answer["bars"]) == 10
    note = "2 bars back on sale on 22 May 2026, from the returns shelf (Orla Penhallow: seal unbroken)"
    for words in (
        ("recall", "bar", returned.batch),
        ("recall", "lot", "4471/2"),
        ("trace", returned.batch),
        ("batch", "show", returned.batch),
    ):
        assert note in " ".join(run(*words).stdout.split())
    card = run("lot", "show", returned.batch).stdout
    assert "back on sale, Orla Penhallow: seal unbroken" in card
    run("recall", "bar", returned.batch, "-o", "bar.pdf")
    text = " ".join(" ".join(page.extract_text() for page in PdfReader("bar.pdf").pages).split())
    assert note in text
    undo(returned.book, last_entry(returned.rows()))
    run("shelf", "waste", f"{returned.batch}=1", "--reason", "the seal is torn")  # thrown away is not back on sale
    assert "back on sale" not in run("recall", "bar", returned.batch).stdout


def test_return_itself_works_as_it_did_and_names_the_next_step(returned: Shop, run: Callable[..., Any]) -> None:
    shown = run("return", f"{returned.batch}=1", "--from", "tern-hall").stdout
    assert shown.startswith(
        f"1 bar of Plain Bar {returned.batch} from Tern Hall, on the returns shelf.\nReturn 3 of sale 1."
    )
    assert "They do not go back on sale by themselves." in shown
    assert f'soapledger resell {returned.batch}=1 --by NAME --reason "…"' in shown
    assert "--reason" in run("resell", f"{returned.batch}=1", code=2).stderr
    run("--as", "Orla", "resell", f"{returned.batch}=1", "--reason", "seal unbroken")
    assert "(Orla: seal unbroken)" in " ".join(run("trace", returned.batch).stdout.split())
