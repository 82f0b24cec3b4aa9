"""The worked shop with a second batch, a shop and a person to sell to, and a stall."""

from datetime import date

import pytest
from making import LOOKED_GOOD, cut
from shop import Shop, released_before

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails

SECOND = "26-002-2"  # ten bars more of the plain bar, released on 5 May 2026


def _fill(book: Book) -> None:
    code = cut(book, on=date(2026, 4, 2))
    assert code == SECOND
    packed = date(2026, 5, 5)
    pass_bars(book, code, Passing(on=packed, by="Nuala", anyway="a trial"))
    released_before(book, code, Releasing(on=packed, by="Nuala", anyway="a trial", bare="a trial", checks=LOOKED_GOOD))
    add_customer(book, CustomerDetails("Tern Hall"), kind="shop", code="tern-hall")
    details = PersonDetails(phone="020 910 0166", address="7 Gorse Hill, Port Emmer")
    add_customer(book, CustomerDetails("Ida Marsh", details), kind="person", code=None)
    add_stall(book, "Quay market")


@pytest.fixture
def selling(shop: Shop, built, frozen) -> Shop:  # type: ignore[no-untyped-def]  # noqa: ARG001
    """The shop as it stands before anything is sold; the day is 1 Jun 2026."""
    path, _ = built("selling", _fill, shop.book.path)
    shop.book.path.write_bytes(path.read_bytes())
    return shop
