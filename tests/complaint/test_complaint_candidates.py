"""Which bars a complaint without a code may be about; ten bars of one batch, released on 4 May 2026."""

from datetime import date
from typing import Any

from ledger.operations.complaint.complaints import Noted, Report, book_complaint, note_complaint
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.rows.complaint import complaint
from ledger.storage.personal import PersonDetails
from ledger.views.complaint.complaint_candidates import candidate_batches

SAT = date(2026, 5, 9)


def found(shop: Any, **more: Any) -> list[tuple[str, int, date | None, int]]:
    report = Report(date(2026, 5, 30), "itched", PersonDetails(), **more)
    card = complaint(shop.rows(), book_complaint(shop.book, report))
    return [(one.code, one.bars, one.first_on, one.standing) for one in candidate_batches(shop.rows(), card)]


def sold(shop: Any) -> None:
    """4 to the quay on 9 May, 1 back, so 3 sold; 2 to the shop on 20 May."""
    add_stall(shop.book, "Quay market")
    add_stall(shop.book, "Church hall")
    stall_out(shop.book, "Quay", {shop.batch: 4}, on=SAT)
    stall_back(shop.book, "Quay", {shop.batch: 1}, on=SAT, takings_minor=1500)
    add_customer(shop.book, CustomerDetails("The Heron", PersonDetails()), kind="shop", code="heron")
    dispatch(shop.book, "heron", {shop.batch: 2}, on=date(2026, 5, 20), price_minor=None, note=None)


def test_the_bars_sold_at_that_stall_by_then(shop: Any) -> None:
    sold(shop)
    assert found(shop, at="quay") == [(shop.batch, 3, SAT, 0)]
    assert found(shop, at="quay", bought_on=SAT) == [(shop.batch, 3, SAT, 0)]
    assert found(shop, at="quay", bought_on=date(2026, 5, 8)) == []
    assert found(shop, at="church") == []


def test_the_bars_sent_to_that_customer_by_then(shop: Any) -> None:
    sold(shop)
    assert found(shop, at="heron") == [(shop.batch, 2, date(2026, 5, 20), 0)]
    assert found(shop, at="heron", bought_on=date(2026, 5, 19)) == []


def test_every_bar_supplied_where_nothing_is_known(shop: Any) -> None:
    assert found(shop) == []  # released, and none has left yet
    sold(shop)
    assert found(shop) == [(shop.batch, 5, SAT, 0)]  # 3 at the quay and 2 to the shop


def test_bars_that_stand_there_uncounted_may_have_been_bought(shop: Any) -> None:
    sold(shop)
    stall_out(shop.book, "Church", {shop.batch: 2}, on=date(2026, 5, 24))
    assert found(shop, at="church") == [(shop.batch, 0, None, 2)]


def test_none_is_looked_for_once_the_batch_is_named(shop: Any) -> None:
    sold(shop)
    number = book_complaint(shop.book, Report(SAT, "itched", PersonDetails(), at="quay"))
    note_complaint(shop.book, number, Noted(SAT, "Nuala", "code read", batch=shop.batch))
    assert candidate_batches(shop.rows(), complaint(shop.rows(), number)) == ()
