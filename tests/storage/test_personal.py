"""People's details can be erased; that they were there and were erased stays."""

import hashlib
import sqlite3
from typing import Any

import pytest
from shop import erase_customer

from ledger.errors import Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.rows.opened import open_rows
from ledger.storage.book import Book
from ledger.storage.chain import salted_digest
from ledger.storage.personal import PersonDetails, forget_person, remember_person

ORLA = PersonDetails(phone="020 910 0177", email="orla.fenn@example.org", address="2 Weir Row, Port Emmer")


def test_the_digest_is_over_the_salt_and_the_details_in_order() -> None:
    details = {"name": "Orla", "phone": None, "email": None, "address": "Weir Row", "health": None}
    text = '["00ff", "Orla", null, null, "Weir Row", null]'
    assert salted_digest("00ff", details) == hashlib.sha256(text.encode()).hexdigest()


def test_what_was_erased_is_nowhere_in_the_file(book: Book) -> None:
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code=None)
    assert b"orla.fenn@example.org" in book.path.read_bytes()
    erase_customer(book, "person-1", reason="asked for it")
    book.close()
    left = book.path.read_bytes()
    for word in (b"Orla Fenn", b"orla.fenn", b"020 910 0177", b"Weir Row"):
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


ADD = ("customer", "add", "Ida Marsh", "--person", "--phone", "020 910 0166")
EDIT = ("customer", "edit", "person-1", "--address", "9 Marsh Lane")
ERASE = ("customer", "erase", "person-1", "--reason", "asked for it", "--yes")
COMPLAIN = ("complaint", "add", "itched", "--name", "Ida Marsh", "--phone", "020 910 0166", "--health", "Marsh rash")


@pytest.mark.usefixtures("frozen")
def test_erasing_a_second_time_says_that_nothing_is_left(book: Book, run: Any) -> None:
    book.close()
    for words in (ADD, EDIT, ("undo", "--yes"), ERASE):
        run(*words)
    assert "nothing to erase" in run(*ERASE, code=1).stderr
    assert "cannot be taken back" in run("undo", "5", "--yes", code=1).stderr
    run("check")


@pytest.mark.usefixtures("frozen")
def test_a_reason_that_repeats_what_is_erased_is_refused(book: Book, run: Any) -> None:
    book.close()
    run(*ADD)
    run(*COMPLAIN)
    for words in (("customer", "erase", "person-1"), ("complaint", "erase", "1")):
        for reason in ("ida marsh asked by letter", "rang from 020 910 0166"):
            assert "leave it out" in run(*words, "--reason", reason, "--yes", code=2).stderr
    assert len(run("history").stdout.splitlines()) == 2 + 3  # the start, the customer, the complaint


def test_a_supplier_changed_and_taken_back_leaves_a_clean_ledger(book: Book, run: Any) -> None:
    book.close()
    run("supplier", "add", "Tarnlow Oils", "--phone", "020 910 0142")
    run("supplier", "edit", "tarnlow-oils", "--phone", "020 910 0143")
    run("undo", "--yes")
    run("check")


def test_who_was_taken_back_is_erased_alone_where_another_has_the_short_name_now(book: Book) -> None:
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code=None)
    undo(book, 2)
    add_customer(book, CustomerDetails("Ida Marsh"), kind="person", code=None)  # person-1 again
    erase_customer(book, "orla fenn", reason="asked for it")
    left = book.path.read_bytes()
    assert b"Orla Fenn" not in left
    assert b"Ida Marsh" in left
    assert check(open_rows(book.path)).findings == ()


def test_a_change_in_an_entry_with_something_erased_and_taken_back_is_still_found(shop: Any) -> None:
    book = shop.book
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code=None)
    undo(book, 15)
    erase_customer(book, "person-1", reason="asked for it")
    assert check(shop.rows()).findings == ()
    raw = sqlite3.connect(book.path, isolation_level=None)
    raw.row_factory = sqlite3.Row
    for table, change, entry in (
        ("customer_revision", "note = 'owes for 3'", 15),
        ("personal", "salted_digest = 'x'", 15),
        ("erasure", "reason = 'none'", 17),
        ("movement", "quantity = quantity + 1", 8),
    ):
        raw.execute("BEGIN")
        raw.execute(f"DROP TRIGGER {table}_never_changed")
        raw.execute(f"UPDATE {table} SET {change} WHERE entry_id = {entry}")
        assert entry in {one.entry for one in check(raw).findings}, table
        raw.execute("ROLLBACK")


def test_copies_of_a_row_where_its_page_was_laid_out_anew_go_too(book: Book) -> None:
    """SQLite overwrites a deleted row, but not the copy that filling and splitting a page leaves between rows."""
    people = []
    for ten in range(30):
        with book.write("note") as tx:
            for one in range(10):
                number = 10 * ten + one
                phone, address = "y" * (number % 400), "x" * (number * 37 % 900)
                details = PersonDetails(f"ZQ{number:03d}", phone, address=address)
                people.append((number, remember_person(tx, details)))
            tx.say("Noted ten people.")
    for number, row in people:
        assert row is not None
        with book.write("erase") as tx:
            forget_person(tx, row, "asked for it")
            tx.say("Erased one.")
        if f"ZQ{number:03d}".encode() in book.path.read_bytes():
            break
    else:
        pytest.skip("this SQLite keeps no such copy")
    book.sweep()
    assert f"ZQ{number:03d}".encode() not in book.path.read_bytes()
    assert check(open_rows(book.path)).findings == ()


def test_an_erasure_beside_a_reader_says_that_traces_may_be_left(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    add_customer(book, CustomerDetails("Orla Fenn", ORLA), kind="person", code=None)
    monkeypatch.setattr("ledger.storage.book.PATIENCE", 0.1)
    reader = sqlite3.connect(book.path, isolation_level=None)

    def read() -> None:
        reader.execute("BEGIN")
        reader.execute("SELECT count(*) FROM entry").fetchone()

    whole = Book.sweep
    monkeypatch.setattr(Book, "sweep", lambda self: (read(), whole(self))[1])
    with pytest.raises(Refused, match="may still leave traces"):
        erase_customer(book, "person-1", reason="asked for it")
    reader.close()
    monkeypatch.undo()
    assert check(open_rows(book.path)).findings == ()
    with pytest.raises(Refused, match="nothing to erase"):  # which cleared the file, too
        erase_customer(book, "person-1", reason="asked for it")
