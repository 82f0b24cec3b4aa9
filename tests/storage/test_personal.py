"""People's details can be erased; that they were there and were erased stays."""

import hashlib
import sqlite3
from typing import Any

from ledger.operations.check import check
from ledger.operations.customers import CustomerDetails, add_customer, erase_customer
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, salted_digest
from ledger.views.reading import open_rows

ORLA = PersonDetails(phone="01 555 0177", email="orla.fenn@example.org", address="2 Weir Row, Port Emmer")


def test_the_digest_is_over_the_salt_and_the_details_in_order() -> None:
    details = {"name": "Orla", "phone": None, "email": None, "address": "Weir Row", "health": None}
    text = '["00ff", "Orla", null, null, "Weir Row", null]'
    assert salted_digest("00ff", details) == hashlib.sha256(text.encode()).hexdigest()


def test_what_was_erased_is_nowhere_in_the_file(book: Book) -> None:
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code=None)
    assert b"orla.fenn@example.org" in book.path.read_bytes()
    assert erase_customer(book, "person-1", reason="asked for it") == 1
    book.close()
    left = book.path.read_bytes()
    for word in (b"Orla Fenn", b"orla.fenn", b"01 555 0177", b"Weir Row"):
        assert word not in left


def test_an_erasure_stays_on_the_chain_and_the_check_is_clean(book: Book) -> None:
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code=None)
    erase_customer(book, "person-1", reason="asked for it")
    assert check(open_rows(book.path)).findings == ()
    raw = sqlite3.connect(book.path)
    assert raw.execute("SELECT reason FROM erasure").fetchall() == [("asked for it",)]


def test_the_same_details_twice_have_different_digests(book: Book) -> None:
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code="one")
    add_customer(book, CustomerDetails("Orla Fenn the younger", ORLA), kind="person", code="two")
    raw = sqlite3.connect(book.path)
    assert raw.execute("SELECT count(DISTINCT salted_digest), count(DISTINCT id) FROM personal").fetchone() == (2, 2)


def test_the_chain_holds_no_detail_of_a_person(full: Any) -> None:
    raw = sqlite3.connect(full.book.path)
    said = " ".join(row[0] for row in raw.execute("SELECT said FROM entry"))
    for word in ("Orla", "Fenn", "Tomas", "Reed", "555"):
        assert word not in said
