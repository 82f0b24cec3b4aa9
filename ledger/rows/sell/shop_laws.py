"""What must hold of invoices in every ledger; `rows/laws.py` runs these with the others."""

import sqlite3
from collections.abc import Iterator

from ledger.domain.keep.finding import PUT_RIGHT, Finding


def _breach(words: str, entry: int, number: int, expected: str) -> Finding:
    return Finding(words, entry, "invoice", f"invoice {number}", expected, PUT_RIGHT)


def invoices_follow_each_other(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Each invoice or credit note has the number after the one made before it, and stands in an entry that counts."""
    query = """
        SELECT i.number, i.entry_id, lag(i.number) OVER (ORDER BY i.entry_id, i.id),
               NOT EXISTS (SELECT 1 FROM live_invoice l WHERE l.id = i.id) FROM invoice i
    """
    for number, entry, before, gone in rows.execute(query):
        if before is not None and number != before + 1:
            yield _breach(f"invoice {number} was made after {before}", entry, number, f"number {before + 1}")
        if gone:
            yield _breach(f"invoice {number} was taken back", entry, number, "an invoice that stays")


def a_sale_is_invoiced_once(rows: sqlite3.Connection) -> Iterator[Finding]:
    """No sale, return or credit stands on two invoices, nor on one of somebody else; each of them counts."""
    query = """
        SELECT w.sale_id, i.number, i.entry_id, count(*) OVER (PARTITION BY w.sale_id),
               coalesce(s.customer_id, i.customer_id) <> i.customer_id,
               NOT EXISTS (SELECT 1 FROM live_sale l WHERE l.id = s.id)
        FROM invoice_sale w JOIN invoice i ON i.id = w.invoice_id JOIN sale s ON s.id = w.sale_id
    """
    for sale, number, entry, many, others, gone in rows.execute(query):
        if many > 1:
            yield _breach(f"sale {sale} is on invoice {number} and on another", entry, number, "each sale once")
        if others:
            yield _breach(f"sale {sale} on invoice {number} is to somebody else", entry, number, "their own sales")
        if gone:
            yield _breach(f"sale {sale} on invoice {number} was taken back", entry, number, "sales that count")


SHOP_LAWS = (invoices_follow_each_other, a_sale_is_invoiced_once)
