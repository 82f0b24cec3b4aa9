"""What the page of a customer tells beside what they had: what is agreed, hers there, promised and invoiced."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date

from ledger.rows.opened import Rows
from ledger.rows.sell.order import OrderLineRow, OrderRow, order_lines, orders
from ledger.rows.sell.terms import terms_on
from ledger.rows.settings import settings
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.units.quantity import whole
from ledger.views.keep.page import Part
from ledger.views.record.pieces import Column, Grid, Words, grid
from ledger.views.shop.consignment import AtShop, at_shops
from ledger.views.shop.owed import InvoiceListed, invoices_listed
from ledger.views.shop.terms import terms_words


class ShopParts:
    """The same of every customer, read once for all their pages."""

    def __init__(self, rows: Rows) -> None:
        """Read what they all ask for."""
        self._currency = settings(rows).currency
        self._terms = terms_on(rows, date.max)
        self._there: dict[int, list[AtShop]] = defaultdict(list)
        for one in at_shops(rows):
            self._there[one.customer_id].append(one)
        lines = order_lines(rows)
        self._orders: dict[int, list[tuple[OrderRow, OrderLineRow]]] = defaultdict(list)
        for order in orders(rows):
            self._orders[order.customer_id] += [(order, line) for line in lines.get(order.id, ())]
        self._invoices: dict[int, list[InvoiceListed]] = defaultdict(list)
        for bill in invoices_listed(rows, date.min):
            self._invoices[bill.customer_id].append(bill)

    def of(self, customer_id: int) -> Iterator[Part]:
        """The parts of one customer; none of what there is nothing of."""
        if terms := self._terms.get(customer_id):
            yield Part("What is agreed", (Words(f"{terms_words(terms)}, from {show_date(terms.on)} on."),))
        if there := self._there.get(customer_id):
            table = grid(
                there,
                Column("bars", lambda one: str(one.bars), right=True, bold=True),
                Column("product", lambda one: one.product),
                Column("batch", lambda one: one.batch),
                Column("brought", lambda one: show_date(one.brought_on)),
            )
            yield Part("On sale or return there, not theirs", (table,))
        if promised := self._orders.get(customer_id):
            yield Part("Promised", (self._promised(promised),))
        if bills := self._invoices.get(customer_id):
            table = grid(
                bills,
                Column("number", lambda one: str(one.number), right=True, bold=True),
                Column("what", lambda one: f"credits invoice {one.of_number}" if one.of_number else one.kind),
                Column("on", lambda one: show_date(one.on)),
                Column("total", lambda one: self._money(one.total_minor), right=True),
                Column("owed", lambda one: self._money(one.owed_minor) if one.owed_minor else "", right=True),
                Column("sales", lambda one: ", ".join(map(str, one.sales))),
            )
            yield Part("Invoices", (table,))

    def _promised(self, found: list[tuple[OrderRow, OrderLineRow]]) -> Grid:
        return grid(
            found,
            Column("order", lambda one: str(one[0].id), right=True, bold=True),
            Column("due", lambda one: show_date(one[0].due_on)),
            Column("product", lambda one: one[1].product),
            Column("batch", lambda one: one[1].batch or ""),
            Column("bars", lambda one: str(one[1].bars), right=True),
            Column("went", lambda one: str(one[1].gone), right=True),
            Column("ended", lambda one: f"{one[0].ended_by}: {one[0].reason}" if one[0].ended_on else ""),
        )

    def _money(self, minor: int) -> str:
        return whole(show_money(minor, self._currency))
