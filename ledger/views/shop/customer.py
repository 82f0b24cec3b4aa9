"""What a customer has to do with her beside what they had: what is agreed, promised, theirs on sale or return, owed."""

from dataclasses import dataclass
from datetime import date

from ledger.rows.opened import Rows
from ledger.rows.sell.terms import Terms, terms_on
from ledger.rows.settings import settings
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.units.wording import count
from ledger.views.shop.consignment import AtShop, at_shops
from ledger.views.shop.orders import OrderView, order_views
from ledger.views.shop.owed import InvoiceListed, Owes, invoices_listed, owed_by
from ledger.views.shop.terms import terms_words


@dataclass(frozen=True)
class CustomerShop:
    """One customer's terms, open orders, bars on sale or return, invoices, and what they owe."""

    terms: Terms | None
    orders: tuple[OrderView, ...]  # those that are open
    consignment: tuple[AtShop, ...]
    invoices: tuple[InvoiceListed, ...]
    owes: Owes


def customer_shop(rows: Rows, customer_id: int, today: date) -> CustomerShop:
    """What stands with one customer today."""
    listed = tuple(invoices_listed(rows, today, customer_id))
    return CustomerShop(
        terms_on(rows, today, [customer_id]).get(customer_id),
        tuple(one for one in order_views(rows, today, customer_id=customer_id) if one.stands == "open"),
        at_shops(rows, customer_id),
        listed,
        owed_by(rows, customer_id, listed),
    )


def customer_words(rows: Rows, found: CustomerShop) -> tuple[tuple[str, str], ...]:
    """The same in words, each under a short name; nothing of what there is none."""
    currency = settings(rows).currency
    words = []
    if found.terms:
        words.append(("agreed", terms_words(found.terms)))
    for one in found.orders:
        late = ", will be late" if one.late else ""
        words.append(("order", f"{one.number}: {count(one.still, 'bar')} still to go by {show_date(one.due_on)}{late}"))
    if found.consignment:
        each = ", ".join(f"{one.product} {one.batch} {one.bars}" for one in found.consignment)
        words.append(("there", f"{count(sum(one.bars for one in found.consignment), 'bar')} of yours: {each}"))
    if found.invoices:
        last = found.invoices[-1]
        notes = sum(one.kind == "credit note" for one in found.invoices)
        credited = f" and {count(notes, 'credit note')}" if notes else ""
        many = f"{len(found.invoices) - notes}{credited}"
        late = f"; late: {', '.join(map(str, found.owes.late))}" if found.owes.late else ""
        words.append(("invoices", f"{many}, the last {last.number} of {show_date(last.on)}{late}"))
    if found.owes.not_invoiced_minor > 0:
        words.append(("to bill", f"{show_money(found.owes.not_invoiced_minor, currency)} on no invoice yet"))
    return tuple(words)
