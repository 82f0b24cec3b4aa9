"""Invoices and credit notes are made: numbered one after the other, and never taken back."""

from collections.abc import Collection
from datetime import date, timedelta

from ledger.errors import BadInput, Refused
from ledger.rows.people import customer_by_code
from ledger.rows.sell.invoice import InvoiceRow, invoice_numbered, invoiced, invoices, sales_on, to_invoice
from ledger.rows.sell.terms import terms_on
from ledger.storage.book import Book
from ledger.storage.tables.sale import Invoice, InvoiceSale
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.units.words import InvoiceKind
from ledger.views.sale.words import whom_kept
from ledger.views.shop.to_invoice import must_have_amounts, sales_to_invoice


def make_invoice(
    book: Book, customer: str, *, on: date, only: Collection[int] = (), number: int | None = None
) -> InvoiceRow:
    """Make an invoice over what was sold to a customer and is on none yet; returns it.

    Raises as `sales_to_invoice`; BadInput for a number where one follows another, or an earlier day than the last has.
    """
    with book.write("invoice make") as tx:
        card = customer_by_code(tx.rows, customer)
        sales = sales_to_invoice(tx.rows, card.id, card.name, on=on, only=only)
        terms = terms_on(tx.rows, on, [card.id]).get(card.id)
        days = terms.pay_days if terms else None
        given = _next(tx, on, number)
        pay_by = None if days is None else on + timedelta(days)
        _write(tx, Invoice(number=given, kind="invoice", on=on, customer_id=card.id, pay_by=pay_by), sales)
        tx.say(f"Invoice {given} to {whom_kept(card)}, over {_over(sales)}.")
        return invoice_numbered(tx.rows, given)


def credit_invoice(book: Book, number: int, *, on: date, only: Collection[int] = ()) -> InvoiceRow:
    """Make a credit note over what came back or was credited of an invoice since; returns it.

    Raises BadInput for no such invoice or return, Refused for nothing to credit.
    """
    with book.write("invoice credit") as tx:
        invoice = invoice_numbered(tx.rows, number)
        if invoice.kind != "invoice":
            raise Refused(f"{number} is a credit note; only an invoice is credited.")
        over = {*sales_on(tx.rows, [invoice.id])[invoice.id]}
        done = invoiced(tx.rows, customer_id=invoice.customer_id)
        known = [one for one in to_invoice(tx.rows, invoice.customer_id) if {*one.of} & over and one.on <= on]
        for wanted in only:
            if wanted not in {one.id for one in known}:
                raise BadInput(f"{wanted} takes nothing from invoice {number}; see: soapledger sale list")
            if wanted in done:
                raise BadInput(f"{wanted} is on credit note {done[wanted]} already.")
        back = [one for one in known if one.id not in done and (not only or one.id in only)]
        if not back:
            raise Refused(
                f"Nothing came back or was credited of invoice {number} that is not credited yet. "
                "Book that first, with soapledger return or sale credit."
            )
        must_have_amounts(back)
        given = _next(tx, on, None)
        note = Invoice(
            number=given, kind="credit note", on=on, customer_id=invoice.customer_id, of_invoice_id=invoice.id
        )
        _write(tx, note, [one.id for one in back])
        tx.say(f"Credit note {given} to invoice {number}.")
        return invoice_numbered(tx.rows, given)


def _next(tx: Transaction, on: date, number: int | None) -> int:
    """The number after the last one; the first is 1, or the one she says."""
    last = max(invoices(tx.rows), key=lambda one: one.number, default=None)
    if last is None:
        if number is not None and number < 1:
            raise BadInput("The first invoice has a number above zero.")
        return number or 1
    if number is not None:
        raise BadInput(f"--number is for the very first invoice; the next is {last.number + 1}.")
    if on < last.on:
        raise BadInput(
            f"{_kind(last.kind)} {last.number} is of {show_date(last.on)}, and the next is not of an earlier day; "
            "look at --on."
        )
    return last.number + 1


def _kind(kind: InvoiceKind) -> str:
    return kind.capitalize()


def _over(sales: list[int]) -> str:
    return count(len(sales), "sale") if len(sales) > 1 else f"sale {sales[0]}"


def _write(tx: Transaction, invoice: Invoice, sales: list[int]) -> None:
    row = tx.add(invoice)
    assert row.id is not None
    tx.add_all(InvoiceSale(invoice_id=row.id, sale_id=sale) for sale in sales)
