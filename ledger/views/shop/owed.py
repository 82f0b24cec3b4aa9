"""What customers owe: of each invoice, and of sales on none."""

from collections.abc import Iterable
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.invoice import invoiced, invoices, sales_on, to_invoice
from ledger.rows.sell.paid import against, balances, fees
from ledger.rows.sell.sale import lines_of
from ledger.units.words import InvoiceKind


class InvoiceListed(NamedTuple):
    """One invoice or credit note: what it comes to on paper, and what is owed of its sales by now."""

    number: int
    kind: InvoiceKind
    of_number: int | None
    customer: str
    customer_id: int
    on: date
    total_minor: int
    owed_minor: int  # below zero: to be paid back; of a credit note none: it is off the invoice that it credits
    pay_by: date | None
    late: bool
    sales: tuple[int, ...]


def invoices_listed(rows: Rows, today: date, customer_id: int | None = None) -> list[InvoiceListed]:
    """Every invoice by its number, with what is owed by now; of one customer where told."""
    found = invoices(rows, customer_id=customer_id)
    over = sales_on(rows, [one.id for one in found])
    every = {sale for sales in over.values() for sale in sales}
    lines, stand, takers = lines_of(rows, every), balances(rows, every), against(rows, every)
    taken = {taker for ones in takers.values() for taker in ones}
    kept = [one for one in fees(rows, every) if one.kind == "commission" and one.customer_id is not None]
    names = contacts(rows, sorted({one.customer_id for one in found}))
    listed = []
    for one in found:
        sales = over[one.id]
        total = sum(line.amount_minor or 0 for sale in sales for line in lines[sale])
        total -= sum(fee.amount_minor for fee in kept if fee.sale_id in sales and fee.entry <= one.entry)
        owed = sum(stand[sale].owed_minor for sale in sales if sale not in taken) if one.kind == "invoice" else 0
        late = owed > 0 and one.pay_by is not None and one.pay_by < today
        name = names[one.customer_id].name
        listed.append(
            InvoiceListed(
                one.number, one.kind, one.of_number, name, one.customer_id, one.on, total, owed, one.pay_by, late,
                tuple(sales),
            )
        )  # fmt: skip
    return listed


class Owes(NamedTuple):
    """What a customer owes, and how much of it stands on no invoice."""

    owed_minor: int
    not_invoiced_minor: int
    late: tuple[int, ...]  # the numbers of invoices that are late


def owed_by(rows: Rows, customer_id: int, listed: Iterable[InvoiceListed]) -> Owes:
    """What a customer owes of everything sold, less what came back, was paid or is kept as commission.

    `listed` are the customer's invoices.
    """
    known = {one.id for one in to_invoice(rows, customer_id)}
    taken = {taker for ones in against(rows, known).values() for taker in ones}
    done = invoiced(rows, customer_id=customer_id)
    late = tuple(one.number for one in listed if one.late)
    open_ = {number: one.owed_minor for number, one in balances(rows, known - taken).items()}
    return Owes(sum(open_.values()), sum(left for number, left in open_.items() if number not in done), late)
