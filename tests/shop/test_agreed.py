"""What a customer pays by what was agreed: the reduction is off the prices that hold, and off nothing else."""

from datetime import date, timedelta
from typing import Any

import pytest
from once import once
from shop import Shop

from ledger.errors import BadInput
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sale.priced import Asked
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.shop.orders import add_order
from ledger.operations.shop.terms import Agreed, agree
from ledger.storage.tables.sale import Price, TaxRate

pytestmark = pytest.mark.usefixtures("frozen")
MAY = date(2026, 5, 20)


@pytest.fixture
def hall(shop: Shop) -> Shop:
    once(agreed)(shop)
    return shop


def agreed(shop: Shop) -> None:
    """A shop that gets 10 % off; a bar costs 6.50."""
    add_customer(shop.book, CustomerDetails("Tern Hall"), kind="shop", code="tern-hall")
    agree(shop.book, "tern-hall", Agreed(reduction_ppm=100_000, pay_days=30), on=date(2026, 5, 4))
    with shop.book.write("price set") as tx:
        tx.add(Price(on=date(2026, 5, 1), price_minor=650))
        tx.say("Set.")


def line(shop: Shop) -> tuple[Any, ...]:
    """(gross, off, tax) of the one line, and by when it is paid."""
    columns = "n.gross_minor, n.reduction_minor, n.tax_minor, s.pay_by"
    query = f"SELECT {columns} FROM sale_line n JOIN sale s ON s.id = n.sale_id"
    return tuple(shop.rows().execute(query).fetchone())


def sell(shop: Shop, bars: int = 3, **more: Any) -> None:
    dispatch(shop.book, "tern-hall", {shop.batch: bars}, **{"on": MAY, "price_minor": None, "note": None} | more)


@pytest.mark.parametrize(("days", "may"), [(0, True), (731, True), (732, False)])
def test_a_day_to_pay_by_is_within_two_years(hall: Shop, days: int, may: bool) -> None:
    if not may:
        with pytest.raises(BadInput, match="more than two years"):
            agree(hall.book, "tern-hall", Agreed(pay_days=days), on=MAY)
        return
    agree(hall.book, "tern-hall", Agreed(pay_days=days), on=MAY)
    sell(hall)
    assert line(hall)[3] == (MAY + timedelta(days)).isoformat()


def test_a_tenth_of_the_price_that_holds_half_up(hall: Shop) -> None:
    """3 x 6.50 = 19.50, less 1.95."""
    sell(hall)
    assert line(hall) == (1950, 195, None, "2026-06-19")


def test_what_is_off_of_all_together_comes_on_top_of_it(hall: Shop) -> None:
    """19.50 - 1.00 = 18.50, less a tenth of that."""
    sell(hall, asked=Asked(reduction_minor=100))
    assert line(hall) == (1950, 285, None, "2026-06-19")


def test_a_price_that_is_typed_stays(hall: Shop) -> None:
    sell(hall, price_minor=500)
    assert line(hall)[:2] == (1500, 0)


def test_a_price_that_was_promised_stays_unless_one_is_typed(hall: Shop) -> None:
    order = add_order(hall.book, "tern-hall", {"plain": 6}, on=MAY, due_on=MAY, price_minor=450)
    sell(hall, order_id=order)
    assert line(hall)[:2] == (1350, 0)


def test_a_typed_price_goes_before_one_that_was_promised(hall: Shop) -> None:
    order = add_order(hall.book, "tern-hall", {"plain": 6}, on=MAY, due_on=MAY, price_minor=450)
    sell(hall, order_id=order, price_minor=400)
    assert line(hall)[:2] == (1200, 0)


def test_tax_on_top_is_on_what_is_left(hall: Shop) -> None:
    """Net 19.50 less a tenth is 17.55; 20 % on top is 3.51, so 21.06."""
    with hall.book.write("tax set") as tx:
        tx.add(TaxRate(on=date(2026, 5, 1), rate_ppm=200_000, name="VAT"))
        tx.say("Set.")
    sell(hall, asked=Asked(on_top=True))
    gross, off, tax, _ = line(hall)
    assert (gross - off, tax) == (2106, 351)


def test_something_off_of_all_together_where_some_were_promised_otherwise(hall: Shop) -> None:
    order = add_order(hall.book, "tern-hall", {"plain": 6}, on=MAY, due_on=MAY, price_minor=450)
    sell(hall, 3, order_id=order, asked=Asked(reduction_minor=50))
    assert line(hall)[:2] == (1350, 50)
    more = {hall.batch: 1}
    with pytest.raises(BadInput, match="more off than the bars cost"):
        dispatch(
            hall.book, "tern-hall", more, on=MAY, price_minor=None, note=None, order_id=order, asked=Asked(None, 451)
        )
