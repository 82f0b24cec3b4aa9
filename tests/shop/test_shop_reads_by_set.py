"""Lists of shops, promises and invoices take as many statements for many as for a few."""

import sqlite3
from collections.abc import Callable
from datetime import date

import pytest
from shop import Shop

from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.shop.count import count_shop
from ledger.operations.shop.invoices import make_invoice
from ledger.operations.shop.orders import add_order
from ledger.operations.shop.terms import Agreed, agree
from ledger.views.keep.shop_parts import ShopParts
from ledger.views.shop.consignment import at_shops
from ledger.views.shop.orders import order_views
from ledger.views.shop.owed import invoices_listed
from ledger.views.stock.promised import promised_by_material, promises

pytestmark = pytest.mark.usefixtures("frozen")
MAY, JUNE = date(2026, 5, 20), date(2026, 6, 5)
ASKED: tuple[Callable[[sqlite3.Connection], object], ...] = (
    lambda rows: order_views(rows, MAY),
    lambda rows: promises(rows, MAY),
    promised_by_material,
    at_shops,
    lambda rows: invoices_listed(rows, MAY),
    ShopParts,
)


def a_customer(shop: Shop, name: str) -> None:
    """One who takes two bars on sale or return, sold one, was invoiced and is promised another."""
    add_customer(shop.book, CustomerDetails(name), kind="shop", code=name)
    agree(shop.book, name, Agreed(consignment=True), on=MAY)
    dispatch(shop.book, name, {shop.batch: 2}, on=MAY, price_minor=None, note=None)
    count_shop(shop.book, name, {"plain": 1}, on=MAY, price_minor=600)
    make_invoice(shop.book, name, on=MAY)
    add_order(shop.book, name, {"plain": 1}, on=MAY, due_on=JUNE)


def statements(shop: Shop) -> list[int]:
    found = []
    for ask in ASKED:
        run: list[str] = []
        with shop.book.look() as rows:
            rows.set_trace_callback(run.append)
            ask(rows)
            rows.set_trace_callback(None)
        found.append(len(run))
    return found


def test_many_take_no_more_than_one(shop: Shop) -> None:
    a_customer(shop, "gull-row")
    one = statements(shop)
    for name in ("tern-hall", "heron", "port"):
        a_customer(shop, name)
    assert statements(shop) == one
    assert min(one) > 0
