"""Invoices and credit notes: what they are over, how they are numbered, what they come to, and that they stay."""

import io
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from once import once
from pypdf import PdfReader
from shop import Shop, erase_customer

from ledger.documents.shop.invoice_page import draw_invoice
from ledger.errors import BadInput, Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer, edit_customer
from ledger.operations.sale.charge import charge
from ledger.operations.sale.pay import pay
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.take_back import take_back
from ledger.operations.shop.count import count_shop
from ledger.operations.shop.invoices import credit_invoice, make_invoice
from ledger.operations.shop.orders import add_order
from ledger.operations.shop.terms import Agreed, agree
from ledger.reference.invoice_fields import FIELDS, invoice_fields
from ledger.rows.history import last_entry
from ledger.rows.opened import as_known, open_rows
from ledger.rows.sell.invoice import invoices, sales_on
from ledger.storage.personal import PersonDetails
from ledger.storage.tables.sale import Invoice, TaxRate
from ledger.views.shop.customer import customer_shop
from ledger.views.shop.invoice import AtRate, InvoiceLine, InvoiceView, at_rates, invoice_view
from ledger.views.shop.owed import invoices_listed, owed_by

pytestmark = pytest.mark.usefixtures("frozen")
MAY, JUNE = date(2026, 5, 20), date(2026, 6, 1)
ADDRESS = "2 Weir Row, Port Emmer"


@pytest.fixture
def hall(shop: Shop) -> Shop:
    once(agreed)(shop)
    return shop


def agreed(shop: Shop) -> None:
    """A shop that buys, and pays in 14 days."""
    details = CustomerDetails("Tern Hall", PersonDetails(address=ADDRESS))
    add_customer(shop.book, details, kind="shop", code="tern-hall")
    agree(shop.book, "tern-hall", Agreed(pay_days=14), on=date(2026, 5, 4))


def sold(shop: Shop, bars: int, price: int | None = 450, on: date = MAY, to: str = "tern-hall") -> int:
    done = dispatch(shop.book, to, {shop.batch: bars}, on=on, price_minor=price, note=None)
    assert done.sale is not None
    return done.sale


@pytest.fixture
def invoiced(hall: Shop) -> Shop:
    """Four bars were sold on 20 May, and invoiced that day."""
    once(sell_and_invoice)(hall)
    return hall


def sell_and_invoice(shop: Shop) -> None:
    sold(shop, 4)
    make_invoice(shop.book, "tern-hall", on=MAY)


def view(shop: Shop, number: int) -> InvoiceView:
    (row,) = invoices(shop.rows(), number=number)
    rows = shop.rows()
    as_known(rows, row.entry)
    return invoice_view(rows, row, program="test")


def over(shop: Shop, number: int) -> list[int]:
    (row,) = invoices(shop.rows(), number=number)
    return sales_on(shop.rows(), [row.id])[row.id]


def test_to_whom_nothing_was_sold_nothing_is_invoiced(hall: Shop) -> None:
    """Nor what is sold only on a later day."""
    for _ in range(2):
        with pytest.raises(Refused, match="Nothing was sold to Tern Hall by 19 May 2026, so"):
            make_invoice(hall.book, "tern-hall", on=date(2026, 5, 19))
        sold(hall, 1, on=MAY)


def test_it_is_over_all_that_is_on_none_yet_and_follows_the_one_before(hall: Shop) -> None:
    one, two = sold(hall, 1), sold(hall, 2)
    assert make_invoice(hall.book, "tern-hall", on=JUNE).number == 1
    assert over(hall, 1) == [one, two]
    with pytest.raises(Refused, match="Everything that was sold to Tern Hall by 1 Jun 2026 is on an invoice"):
        make_invoice(hall.book, "tern-hall", on=JUNE)
    three, four = sold(hall, 1), sold(hall, 1)
    made = make_invoice(hall.book, "tern-hall", on=JUNE, only=[four])
    assert (made.number, made.pay_by, over(hall, 2)) == (2, date(2026, 6, 15), [four])
    make_invoice(hall.book, "tern-hall", on=JUNE)
    assert over(hall, 3) == [three]
    assert view(hall, 1).total_minor == 3 * 450
    assert check(hall.rows()).findings == ()


@pytest.mark.parametrize(("day", "there"), [(19, False), (20, True), (21, True)])
def test_a_sale_is_invoiced_on_its_day_or_later(hall: Shop, day: int, there: bool) -> None:
    sale = sold(hall, 1)
    if there:
        make_invoice(hall.book, "tern-hall", on=date(2026, 5, day))
        return
    with pytest.raises(Refused, match="by 19 May 2026"):
        make_invoice(hall.book, "tern-hall", on=date(2026, 5, day))
    with pytest.raises(BadInput, match="after the day of the invoice"):
        make_invoice(hall.book, "tern-hall", on=date(2026, 5, day), only=[sale])


def test_the_first_number_is_hers_to_say_and_no_later_one(hall: Shop) -> None:
    sold(hall, 1)
    with pytest.raises(BadInput, match="above zero"):
        make_invoice(hall.book, "tern-hall", on=JUNE, number=0)
    assert make_invoice(hall.book, "tern-hall", on=JUNE, number=118).number == 118
    sold(hall, 1)
    with pytest.raises(BadInput, match="the next is 119"):
        make_invoice(hall.book, "tern-hall", on=JUNE, number=120)
    with pytest.raises(BadInput, match="not of an earlier day"):
        make_invoice(hall.book, "tern-hall", on=date(2026, 5, 31))
    assert make_invoice(hall.book, "tern-hall", on=JUNE).number == 119


def test_the_file_itself_refuses_a_gap(hall: Shop) -> None:
    sold(hall, 1)
    make_invoice(hall.book, "tern-hall", on=JUNE)
    with pytest.raises(Refused, match="follows the one before"), hall.book.write("invoice make") as tx:
        tx.add(Invoice(number=3, kind="invoice", on=JUNE, customer_id=1))


def test_what_is_not_to_be_invoiced(hall: Shop) -> None:
    sold(hall, 1)
    make_invoice(hall.book, "tern-hall", on=JUNE)
    add_customer(hall.book, CustomerDetails("Gull Row", PersonDetails()), kind="shop", code="gull-row")
    sold(hall, 1, to="gull-row")
    for sale, why in ((1, "on invoice 1 already"), (2, "no sale 2 to Tern Hall"), (9, "no sale 9")):
        with pytest.raises(BadInput, match=why):
            make_invoice(hall.book, "tern-hall", on=JUNE, only=[sale])
    sold(hall, 1, price=None)
    with pytest.raises(Refused, match="has no amount, so it cannot be invoiced"):
        make_invoice(hall.book, "tern-hall", on=JUNE)


def test_it_is_never_taken_back_nor_a_sale_on_it(hall: Shop) -> None:
    sold(hall, 4)
    sale = last_entry(hall.rows())
    make_invoice(hall.book, "tern-hall", on=JUNE)
    with pytest.raises(Refused, match="made invoice 1; its number is given, so it is never taken back"):
        undo(hall.book, last_entry(hall.rows()))
    with pytest.raises(Refused, match="is on invoice 1, which is never taken back"):
        undo(hall.book, sale)


def test_what_came_back_is_credited_once(invoiced: Shop) -> None:
    """Four at 4.50 are 18.00; one comes back and is credited with 4.50, so 13.50 are owed."""
    with pytest.raises(Refused, match="Nothing came back or was credited of invoice 1"):
        credit_invoice(invoiced.book, 1, on=JUNE)
    take_back(invoiced.book, {invoiced.batch: 1}, customer="tern-hall", stall=None, on=date(2026, 5, 25), reason="torn")
    note = credit_invoice(invoiced.book, 1, on=JUNE)
    assert (note.number, note.kind, note.of_number) == (2, "credit note", 1)
    assert view(invoiced, 2).total_minor == -450
    assert view(invoiced, 1).total_minor == 1800
    for number in (1, 2):
        with pytest.raises(Refused):
            credit_invoice(invoiced.book, number, on=JUNE)
    one, two = invoices_listed(invoiced.rows(), JUNE)
    assert (one.owed_minor, two.owed_minor, one.late) == (1350, 0, False)
    assert owed_by(invoiced.rows(), 1, invoices_listed(invoiced.rows(), JUNE, 1)).owed_minor == 1350
    with pytest.raises(Refused, match="made credit note 2"):
        undo(invoiced.book, last_entry(invoiced.rows()))
    with pytest.raises(Refused, match="is on credit note 2, which is never taken back"):
        undo(invoiced.book, last_entry(invoiced.rows()) - 1)
    assert check(invoiced.rows()).findings == ()


def test_what_is_owed_of_an_invoice_is_what_is_owed_of_its_sales(hall: Shop) -> None:
    """By hand: 18.00, less a bar of 4.50 and a commission of 2.00 booked later, is 11.50; on paper it is 18.00.

    A credit note changes nothing of that; once 12.00 are paid, 0.50 is to be paid back.
    """
    number = sold(hall, 4)
    make_invoice(hall.book, "tern-hall", on=MAY)
    take_back(hall.book, {hall.batch: 1}, customer="tern-hall", stall=None, on=date(2026, 5, 25), reason="torn")
    charge(hall.book, "commission", 200, on=JUNE, sale=number)
    for noted in (False, True):
        if noted:
            credit_invoice(hall.book, 1, on=JUNE)
        one = invoices_listed(hall.rows(), date(2026, 6, 4))[0]
        assert (one.total_minor, one.owed_minor, one.late) == (1800, 1150, True)
        assert owed_by(hall.rows(), 1, invoices_listed(hall.rows(), JUNE, 1)).owed_minor == 1150
    assert view(hall, 1).total_minor == 1800
    pay(hall.book, number, 1200, way="bank", on=JUNE)
    one = invoices_listed(hall.rows(), date(2026, 6, 4))[0]
    assert (one.owed_minor, one.late) == (-50, False)


def test_an_invoice_of_which_everything_came_back_is_not_late(invoiced: Shop) -> None:
    take_back(invoiced.book, {invoiced.batch: 4}, customer="tern-hall", stall=None, on=date(2026, 5, 25), reason="torn")
    (one,) = invoices_listed(invoiced.rows(), date(2026, 6, 4))
    assert (one.total_minor, one.owed_minor, one.late) == (1800, 0, False)


def test_the_list_says_apart_what_is_owed_and_what_is_to_be_paid_back(hall: Shop, run: Callable[..., Any]) -> None:
    """18.00 are owed by one; another paid 9.00 for two bars and gave one back: neither is taken off the other."""
    add_customer(hall.book, CustomerDetails("Gull Row"), kind="shop", code="gull-row")
    sold(hall, 4)
    make_invoice(hall.book, "tern-hall", on=MAY)
    other = sold(hall, 2, to="gull-row")
    make_invoice(hall.book, "gull-row", on=MAY)
    pay(hall.book, other, 900, way="cash", on=MAY)
    run("return", f"{hall.batch}=1", "--from", "gull-row")
    head = "2 invoices, 18.00 EUR still owed, 4.50 EUR to be paid back.\n"
    assert run("invoice", "list").stdout.startswith(head)
    assert "Credit note 3 for invoice 2" in run("invoice", "credit", "2").stdout
    said = run("invoice", "list").stdout
    assert said.startswith(f"2 invoices and 1 credit note{head.removeprefix('2 invoices')}")
    assert all(len(line) <= 80 for line in said.splitlines())
    assert said.splitlines()[-1].endswith("-4.50                     credits 2")
    assert "invoice show 3 -o credit-note-3.pdf" in run("invoice", "show", "3").stdout
    shown = run("invoice", "list", "--last", "1").stdout
    # Of all, not of those shown: one that is late stands below however old it is, and is no last one.
    assert shown.startswith(f"2 invoices and 1 credit note{head.removeprefix('2 invoices')}")


def test_a_credit_note_says_what_was_paid_back(invoiced: Shop, run: Callable[..., Any], tmp_path: Path) -> None:
    pay(invoiced.book, 1, 1800, way="cash", on=MAY)
    run("return", f"{invoiced.batch}=1", "--from", "tern-hall", "--cash")
    assert "  4.50 EUR was paid back when it was made.\n" in run("invoice", "credit", "1").stdout
    run("invoice", "show", "2", "-o", "note.pdf")
    note = PdfReader(tmp_path / "note.pdf").pages[0].extract_text()
    assert "Paid back" in note
    assert "Supplied" not in note  # nothing was: it came back, on the day the clock shows
    assert "Taken back 1 Jun 2026" in note


def test_what_came_back_before_it_is_made_is_off_it(hall: Shop) -> None:
    sold(hall, 4)
    take_back(hall.book, {hall.batch: 1}, customer="tern-hall", stall=None, on=date(2026, 5, 25), reason="torn")
    make_invoice(hall.book, "tern-hall", on=JUNE)
    assert view(hall, 1).total_minor == 1350
    page = PdfReader(io.BytesIO(draw_invoice(view(hall, 1)))).pages[0].extract_text()
    assert "Supplied 20 May 2026\n" in page
    assert "Taken back 25 May 2026\n" in page
    (one,) = invoices_listed(hall.rows(), JUNE)
    assert (one.total_minor, one.owed_minor) == (1350, 1350)


@pytest.mark.parametrize(("day", "late"), [(2, False), (3, False), (4, True)])
def test_it_is_late_the_day_after_it_is_to_be_paid(hall: Shop, day: int, late: bool) -> None:
    """Made on 20 May, to be paid in 14 days: by 3 June."""
    sold(hall, 1)
    make_invoice(hall.book, "tern-hall", on=MAY)
    assert [one.late for one in invoices_listed(hall.rows(), date(2026, 6, day))] == [late]


def test_amounts_by_rate() -> None:
    """By hand: 12.30 and 24.60 with 23 % within are 2.30 and 4.60 tax; 10.90 with 9 % 0.90; 5.00 without."""

    def line(ppm: int | None, tax: int | None, amount: int) -> InvoiceLine:
        return InvoiceLine(1, MAY, "Plain Bar", None, 1, amount, 0, ppm, tax, amount)

    lines = [line(None, None, 500), line(230_000, 230, 1230), line(90_000, 90, 1090), line(230_000, 460, 2460)]
    assert at_rates(lines) == (
        AtRate(230_000, 3000, 690, 3690),
        AtRate(90_000, 1000, 90, 1090),
        AtRate(None, 500, 0, 500),
    )


def test_a_count_is_invoiced_less_the_commission(hall: Shop) -> None:
    """Four sold at 6.50 are 26.00, less 30 %: 18.20."""
    agree(hall.book, "tern-hall", Agreed(consignment=True, commission_ppm=300_000), on=date(2026, 5, 5))
    dispatch(hall.book, "tern-hall", {hall.batch: 6}, on=date(2026, 5, 12), price_minor=None, note=None)
    count_shop(hall.book, "tern-hall", {"plain": 2}, on=MAY, price_minor=650)
    make_invoice(hall.book, "tern-hall", on=JUNE)
    found = view(hall, 1)
    assert (found.commission_minor, found.total_minor) == (780, 1820)
    stands = customer_shop(hall.rows(), 1, JUNE)
    assert (stands.owes.owed_minor, stands.owes.not_invoiced_minor) == (1820, 0)
    assert [one.bars for one in stands.consignment] == [2]


def test_it_is_drawn_as_it_was_known_when_it_was_made(hall: Shop, run: Callable[..., Any], tmp_path: Path) -> None:
    sold(hall, 4)
    run("invoice", "make", "tern-hall", "--on", "2026-05-20", "--yes")
    run("invoice", "show", "1", "-o", "one.pdf")
    edit_customer(hall.book, "tern-hall", CustomerDetails("Tern House", PersonDetails(address="1 New Row")))
    take_back(hall.book, {hall.batch: 1}, customer="tern-hall", stall=None, on=JUNE, reason="torn")
    run("invoice", "show", "1", "-o", "two.pdf")
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()
    text = PdfReader(tmp_path / "one.pdf").pages[0].extract_text()
    for words in ("Invoice 1", "Tern Hall", "2 Weir Row", hall.batch, "€4.50", "€18.00", "To be paid by 3 Jun 2026"):
        assert words in text


def test_erasing_the_customer_keeps_sale_and_invoice(hall: Shop, run: Callable[..., Any]) -> None:
    add_customer(hall.book, CustomerDetails("Orla Fenn", PersonDetails(address="5 Quay")), kind="person", code=None)
    code = hall.rows().execute("SELECT max(code) FROM customer WHERE kind = 'person'").fetchone()[0]
    add_order(hall.book, code, {"plain": 1}, on=MAY, due_on=JUNE, note="ring twice at the blue door")
    sold(hall, 2, to=code)
    make_invoice(hall.book, code, on=JUNE)
    agree(hall.book, code, Agreed(consignment=True), on=JUNE)
    dispatch(hall.book, code, {hall.batch: 1}, on=JUNE, price_minor=None, note=None)
    erase_customer(hall.book, code, reason="asked for it")
    told = json.loads(run("invoice", "show", "1", "--json").stdout)
    assert (told["customer"], told["customer_address"], told["total_minor"]) == (code, None, 900)
    assert "blue door" not in json.dumps([list(row) for row in hall.rows().execute("SELECT * FROM customer_order")])
    assert "Orla" not in json.dumps([list(row) for row in hall.rows().execute("SELECT * FROM place")])
    assert check(hall.rows()).findings == ()


@pytest.mark.parametrize(
    ("country", "registered"), [("IE", True), ("IE", False), ("GB", True), ("US", True), ("NZ", False)]
)
def test_what_an_invoice_must_bear_is_told_with_its_source(country: str, registered: bool) -> None:
    found = invoice_fields(country, registered=registered)
    assert {*found.needs} <= {*FIELDS}
    assert {"number", "date", "seller", "customer", "total"} <= {*found.needs}
    assert ("seller tax number" in found.needs) is (registered and country != "US")
    assert "unverified" in found.source or "common practice" in found.source


def test_a_file_of_hers_goes_first_and_its_faults_are_named(tmp_path: Path) -> None:
    own = tmp_path / "invoice-fields.toml"
    part = 'what = "invoice fields"\n\n[[country]]\ncodes = ["IE"]\nneeds = ["total"]\nsource = "my accountant"\n'
    own.write_text(part + 'words = "Thank you."\n', encoding="utf-8")
    assert invoice_fields("IE", registered=True, folder=tmp_path).words == "Thank you."
    for text, why in (
        (part.replace("total", "stamp"), "'stamp' is not known here"),
        (part.replace("invoice fields", "fields"), "none of invoice fields"),
        (part.replace("IE", "GB"), "no part of it is for IE"),
    ):
        own.write_text(text, encoding="utf-8")
        with pytest.raises(BadInput, match=why):
            invoice_fields("IE", registered=True, folder=tmp_path)


def test_the_commands(hall: Shop, run: Callable[..., Any], tmp_path: Path) -> None:
    assert "No invoice yet" in run("invoice", "list").stdout
    with hall.book.write("tax set") as tx:
        tx.add(TaxRate(on=date(2026, 5, 1), rate_ppm=230_000, name="VAT"))
        tx.say("Set.")
    sold(hall, 4)
    asked = run("invoice", "make", "tern-hall", input="n\n", code=1)
    assert "An invoice here must bear your tax number" in asked.stderr
    assert invoices(open_rows(hall.book.path)) == []
    made = run("invoice", "make", "tern-hall", "--sales", "1", "--number", "7", "--yes").stdout
    assert "Invoice 7 to Tern Hall: 18.00 EUR, to be paid by 15 Jun 2026" in made
    assert "3.37 EUR of it tax at 23 %" in made  # 18.00 × 23/123 = 3.3658…
    assert "18.00 EUR still owed" in run("invoice", "list").stdout
    assert json.loads(run("invoice", "list", "--json").stdout)[0]["owed_minor"] == 1800
    assert hall.batch in run("invoice", "show", "7").stdout
    for paper, wide in (("a4", 595), ("letter", 612)):
        run("invoice", "show", "7", "-o", "i.pdf", "--paper", paper, "--force")
        assert round(float(PdfReader(tmp_path / "i.pdf").pages[0].mediabox.width)) == wide
    run("return", f"{hall.batch}=1", "--from", "tern-hall")
    assert "Credit note 8 for invoice 7" in run("invoice", "credit", "7").stdout
    run("invoice", "show", "8", "-o", "c.pdf")
    assert "Tax at 23" in PdfReader(tmp_path / "i.pdf").pages[0].extract_text()
    assert "for invoice 7" in PdfReader(tmp_path / "c.pdf").pages[0].extract_text()
    shown = run("customer", "show", "tern-hall").stdout
    assert "13.50 EUR is owed" in shown
    assert "no invoice 9" in run("invoice", "show", "9", code=2).stderr
    assert "stands twice" in run("invoice", "make", "tern-hall", "--sales", "1,1", code=2).stderr
