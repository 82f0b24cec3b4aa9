"""Invoices and credit notes, and the sales they are over."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.opened import day, maybe_day
from ledger.units.words import InvoiceKind


class InvoiceRow(NamedTuple):
    """One invoice or credit note; none is ever taken back."""

    id: int
    entry: int
    number: int
    kind: InvoiceKind
    on: date
    customer_id: int
    of_number: int | None  # of a credit note: the invoice it takes from
    pay_by: date | None


def invoices(
    rows: sqlite3.Connection, *, customer_id: int | None = None, number: int | None = None
) -> list[InvoiceRow]:
    """Every invoice and credit note by its number; of one customer, or one, where told."""
    found = rows.execute(
        """
        SELECT i.id, i.entry_id, i.number, i.kind, i."on", i.customer_id, o.number, i.pay_by
        FROM invoice i LEFT JOIN invoice o ON o.id = i.of_invoice_id
        WHERE (?1 IS NULL OR i.customer_id = ?1) AND (?2 IS NULL OR i.number = ?2) ORDER BY i.number
        """,
        (customer_id, number),
    )
    return [InvoiceRow(row[0], row[1], row[2], row[3], day(row[4]), row[5], row[6], maybe_day(row[7])) for row in found]


def invoice_numbered(rows: sqlite3.Connection, number: int) -> InvoiceRow:
    """One invoice or credit note. Raises BadInput for one that is not there."""
    found = invoices(rows, number=number)
    if not found:
        raise BadInput(f"There is no invoice {number}; see them all: soapledger invoice list --all")
    return found[0]


def sales_on(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, list[int]]:
    """The sales that some invoices (by their row numbers) are over, in the order they were written."""
    found = rows.execute(
        "SELECT s.invoice_id, s.sale_id FROM json_each(?) w CROSS JOIN invoice_sale s ON s.invoice_id = w.value "
        "ORDER BY s.id",
        (json.dumps(sorted({*numbers})),),
    )
    sales: dict[int, list[int]] = {number: [] for number in numbers}
    for invoice, sale in found:
        sales[invoice].append(sale)
    return sales


def invoiced(rows: sqlite3.Connection, *, customer_id: int) -> dict[int, int]:
    """The number of the invoice or credit note that each sale, return and credit of a customer is on."""
    found = rows.execute(
        "SELECT s.sale_id, i.number FROM invoice i JOIN invoice_sale s ON s.invoice_id = i.id WHERE i.customer_id = ?",
        (customer_id,),
    )
    return {row[0]: row[1] for row in found}


class ToInvoice(NamedTuple):
    """A sale, a return or a credit of a customer that may stand on an invoice."""

    id: int
    entry: int
    on: date
    of: tuple[int, ...]  # of a return or a credit: the sales it takes from
    untold: int  # lines without an amount


def to_invoice(rows: sqlite3.Connection, customer_id: int) -> list[ToInvoice]:
    """Every sale to a customer or at a shop's count, and what takes from it, by its day."""
    found = rows.execute(
        """
        SELECT s.id, s.entry_id, s."on", group_concat(DISTINCT o.sale_id),
               coalesce(sum(n.gross_minor IS NULL), 0)
        FROM live_sale s LEFT JOIN live_sale_line n ON n.sale_id = s.id LEFT JOIN sale_line o ON o.id = n.of_line_id
        WHERE s.customer_id = ? GROUP BY s.id ORDER BY s."on", s.id
        """,
        (customer_id,),
    )
    return [
        ToInvoice(row[0], row[1], day(row[2]), tuple(sorted(map(int, row[3].split(",")))) if row[3] else (), row[4])
        for row in found
    ]


def made_in(rows: sqlite3.Connection, entry: int) -> InvoiceRow | None:
    """The invoice or credit note that an entry made."""
    return next((one for one in invoices(rows) if one.entry == entry), None)


def over_sales_of(rows: sqlite3.Connection, entry: int) -> list[InvoiceRow]:
    """The invoices and credit notes over a sale, return or credit that an entry booked."""
    found = rows.execute(
        "SELECT DISTINCT i.number FROM sale s JOIN invoice_sale w ON w.sale_id = s.id "
        "JOIN invoice i ON i.id = w.invoice_id WHERE s.entry_id = ? ORDER BY i.number",
        (entry,),
    )
    return [one for row in found for one in invoices(rows, number=row[0])]


def tax_number(rows: sqlite3.Connection) -> str | None:
    """The number under which she is registered for a tax on sales."""
    row = rows.execute("SELECT tax_number FROM live_settings_revision ORDER BY id DESC LIMIT 1").fetchone()
    return str(row[0]) if row and row[0] else None
