"""The note that goes with bars, and the label of the parcel."""

import io
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from once import once
from pypdf import PdfReader
from shop import Shop

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels
from ledger.errors import BadInput, Refused
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.take_back import take_back
from ledger.operations.shop.back import back_from_shop
from ledger.operations.shop.count import count_shop
from ledger.operations.shop.orders import add_order
from ledger.operations.shop.terms import Agreed, agree
from ledger.rows.history import last_entry
from ledger.storage.personal import PersonDetails
from ledger.views.label.parcel import ParcelText
from ledger.views.shop.delivery import delivery
from ledger.views.shop.parcel import parcel_text

pytestmark = pytest.mark.usefixtures("frozen")
MAY = date(2026, 5, 20)


@pytest.fixture
def hall(shop: Shop) -> Shop:
    once(delivered)(shop)
    return shop


def delivered(shop: Shop) -> None:
    """A customer with an address; three bars went there on an order."""
    details = CustomerDetails("Tern Hall", PersonDetails(phone="020 910 0177", address="2 Weir Row, Port Emmer"))
    add_customer(shop.book, details, kind="shop", code="tern-hall")
    order = add_order(shop.book, "tern-hall", {"plain": 3}, on=date(2026, 5, 10), due_on=MAY)
    dispatch(shop.book, "tern-hall", {shop.batch: 3}, on=MAY, price_minor=450, note="box 4", order_id=order)


def test_a_line_for_each_batch_with_what_its_label_says(hall: Shop) -> None:
    """Made on 1 April 2026, best for 24 months; 100 g a bar by the recipe."""
    found = delivery(hall.rows(), sale=1, program="test")
    (line,) = found.lines
    assert (line.product, line.batch, line.bars, line.net_weight) == ("Plain Bar", hall.batch, 3, "100 g")
    assert "March 2028" in line.best_before
    assert (found.order, found.on, found.consignment, found.bars) == (1, MAY, False, 3)


def test_bars_on_sale_or_return_have_theirs_by_the_entry(hall: Shop) -> None:
    agree(hall.book, "tern-hall", Agreed(consignment=True), on=MAY)
    dispatch(hall.book, "tern-hall", {hall.batch: 2}, on=MAY, price_minor=None, note="box 5")
    entry = last_entry(hall.rows())
    found = delivery(hall.rows(), entry=entry, program="test")
    assert (found.bars, found.consignment, found.note, found.printed_from.entry) == (2, True, "box 5", entry)
    count_shop(hall.book, "tern-hall", {"plain": 1}, on=MAY, price_minor=450)
    with pytest.raises(Refused, match="is a shop's count"):
        delivery(hall.rows(), sale=2, program="test")
    undo(hall.book, last_entry(hall.rows()))
    back_from_shop(hall.book, "tern-hall", {"plain": 1}, on=MAY)
    with pytest.raises(BadInput, match="took nothing to a shop"):
        delivery(hall.rows(), entry=last_entry(hall.rows()), program="test")
    undo(hall.book, last_entry(hall.rows()))
    undo(hall.book, entry)
    with pytest.raises(BadInput, match="took nothing to a shop"):
        delivery(hall.rows(), entry=entry, program="test")


def test_of_what_there_is_none(hall: Shop) -> None:
    with pytest.raises(BadInput, match="no sale 9"):
        delivery(hall.rows(), sale=9, program="test")
    take_back(hall.book, {hall.batch: 1}, customer="tern-hall", stall=None, on=MAY, reason=None)
    with pytest.raises(BadInput, match="no sale 2"):  # which is a return
        delivery(hall.rows(), sale=2, program="test")
    undo(hall.book, last_entry(hall.rows()))
    undo(hall.book, last_entry(hall.rows()))
    with pytest.raises(BadInput, match="no sale 1"):
        delivery(hall.rows(), sale=1, program="test")


@pytest.mark.parametrize(("paper", "wide"), [("a4", 595), ("letter", 612)])
def test_the_papers(hall: Shop, run: Callable[..., Any], tmp_path: Path, paper: str, wide: int) -> None:
    assert json.loads(run("delivery-note", "1", "--json").stdout)["lines"][0]["batch"] == hall.batch
    assert "3 bars to Tern Hall on 20 May 2026, sold (sale 1)" in run("delivery-note", "sale 1").stdout
    run("delivery-note", "1", "-o", "note.pdf", "--paper", paper)
    page = PdfReader(tmp_path / "note.pdf").pages[0]
    assert round(float(page.mediabox.width)) == wide
    text = page.extract_text()
    for words in ("Delivery note", "Tern Hall", hall.batch, "100 g", "March 2028", "Order 1", "box 4", "Received by"):
        assert words in text
    run("parcel", "1", "-o", "parcel.pdf", "--count", "2")
    label = PdfReader(tmp_path / "parcel.pdf").pages[0].extract_text()
    assert label.count("Weir Row") == 1 or label.count("2 Weir Row") == 2
    assert "Which delivery" in run("delivery-note", code=2).stderr
    assert "Which delivery" in run("parcel", "1", "--entry", "3", "-o", "p.pdf", code=2).stderr


def test_a_parcel_has_room_for_six_lines_of_each_address() -> None:
    """A name, a house, a street, a town, a code and a country; the sender's stood in 19 mm, where four fitted."""
    lines = ("Wrenfold Soapworks", "The Old Dairy", "Quay Lane", "Larkmere", "Co. Emmer, X12 3456", "Ireland")
    label = ParcelText(lines, lines, "sale 11")
    drawn = draw_labels(label, label_layout("parcel-label"), sheet_layout("a4-8"), count=1)
    text = PdfReader(io.BytesIO(drawn)).pages[0].extract_text()
    assert [text.count(line) for line in lines] == [2] * len(lines)


def test_a_parcel_needs_an_address(hall: Shop, run: Callable[..., Any]) -> None:
    add_customer(hall.book, CustomerDetails("Gull Row", PersonDetails()), kind="shop", code="gull-row")
    dispatch(hall.book, "gull-row", {hall.batch: 1}, on=MAY, price_minor=450, note=None)
    assert "No address of Gull Row is kept here" in run("parcel", "2", "-o", "p.pdf", code=1).stderr
    run("delivery-note", "2", "-o", "n.pdf")


def test_a_long_address_shares_lines_and_leaves_the_country_its_own(hall: Shop, run: Callable[..., Any]) -> None:
    address = "Unit 4, Old Cannery Business Park, 2 Weir Row, Port Emmer, County Cork, T12 X234, Ireland"
    run("customer", "edit", "tern-hall", "--address", address)
    found = parcel_text(delivery(hall.rows(), sale=1, program="test"))
    assert found.to == (
        "Tern Hall",
        "Unit 4",
        "Old Cannery Business Park",
        "2 Weir Row, Port Emmer",
        "County Cork, T12 X234",
        "Ireland",
    )
    run("parcel", "1", "-o", "parcel.pdf")
