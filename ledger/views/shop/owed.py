"""What customers owe: of each invoice, and of sales on none."""

from datetime import date
from typing import NamedTuple

from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.invoice import invoiced, invoices, sales_on, to_invoice
from ledger.rows.sell.paid import fees, payments_of
from ledger.rows.sell.sale import lines_of
from ledger.units.words import InvoiceKind


class InvoiceListed(NamedTuple):
    """One invoice or credit note; owed is what it came to less what was paid of its sales by now and credited."""

    number: int
    kind: InvoiceKind
    of_number: int | None
    customer: str
    customer_id: int
    on: date
    total_minor: int
    owed_minor: int  # of a credit note none: it is off the invoice that it credits
    pay_by: date | None
    late: bool
    sales: tuple[int, ...]


def _come_to(rows: Rows, numbers: set[int]) -> dict[int, tuple[int, int]]:
    """What each sale comes to, less a shop's commission, and what was paid of it; in three statements for all."""
    lines, paid = lines_of(rows, numbers), payments_of(rows, numbers)
    kept: dict[int, int] = {}
    for one in fees(rows, numbers):
        if one.kind == "commission" and one.sale_id is not None:
            kept[one.sale_id] = kept.get(one.sale_id, 0) + one.amount_minor
    return {
        number: (
            sum(one.amount_minor or 0 for one in lines[number]) - kept.get(number, 0),
            sum(one.amount_minor for one in paid[number]),
        )
        for number in numbers
    }


def invoices_listed(rows: Rows, today: date, customer_id: int | None = None) -> list[InvoiceListed]:
    """Every invoice by its number, with what is owed by now; of one customer where told."""
    found = invoices(rows, customer_id=customer_id)
    over = sales_on(rows, [one.id for one in found])
    worth = _come_to(rows, {sale for sales in over.values() for sale in sales})
    names = contacts(rows, sorted({one.customer_id for one in found}))
    credited: dict[int, int] = {}
    for one in found:
        if one.of_number is not None:
            less = sum(sum((worth[sale][0], -worth[sale][1])) for sale in over[one.id])
            credited[one.of_number] = credited.get(one.of_number, 0) + less
    lines = []
    for one in found:
        total = sum(worth[sale][0] for sale in over[one.id])
        owed = total - sum(worth[sale][1] for sale in over[one.id]) + credited.get(one.number, 0)
        owed = owed if one.kind == "invoice" else 0
        late = owed > 0 and one.pay_by is not None and one.pay_by < today
        name = names[one.customer_id].name
        lines.append(
            InvoiceListed(
                one.number, one.kind, one.of_number, name, one.customer_id, one.on, total, owed, one.pay_by, late,
                tuple(over[one.id]),
            )
        )  # fmt: skip
    return lines


class Owes(NamedTuple):
    """What a customer owes, and how much of it stands on no invoice."""

    owed_minor: int
    not_invoiced_minor: int
    late: tuple[int, ...]  # the numbers of invoices that are late


def owed_by(rows: Rows, customer_id: int, today: date) -> Owes:
    """What a customer owes of everything sold, less what came back, was paid or is kept as commission."""
    known = to_invoice(rows, customer_id)
    worth = _come_to(rows, {one.id for one in known})
    done = invoiced(rows, customer_id=customer_id)
    late = tuple(one.number for one in invoices_listed(rows, today, customer_id) if one.late)
    open_ = {number: total - paid for number, (total, paid) in worth.items()}
    return Owes(sum(open_.values()), sum(left for number, left in open_.items() if number not in done), late)
