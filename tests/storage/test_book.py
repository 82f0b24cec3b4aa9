"""One operation is one transaction is one entry."""

import sqlite3
from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.fileformat import APPLICATION_ID
from ledger.storage.book import Book
from ledger.storage.chain import GENESIS
from ledger.storage.tables.stock import Place


def entries(path: Path) -> list[tuple[Any, ...]]:
    raw = sqlite3.connect(path)
    found = raw.execute("SELECT id, who, verb, said, recorded_at, previous, digest FROM entry ORDER BY id").fetchall()
    raw.close()
    return found


def refuse_after(_: Place) -> None:
    raise Refused("no")


def test_an_operation_becomes_the_next_entry_chained_to_the_one_before(book: Book) -> None:
    with book.write("stall add") as tx:
        place = tx.add(Place(code="quay", name="Quay", kind="stall"))
        tx.say("Added stall Quay.")
    first, second = entries(book.path)
    assert second[:4] == (2, "Nuala", "stall add", "Added stall Quay.")
    assert place.entry_id == 2
    assert first[5] == GENESIS
    assert second[5] == first[6]


def test_an_operation_that_fails_half_way_writes_nothing(book: Book) -> None:
    with pytest.raises(Refused), book.write("stall add") as tx:
        refuse_after(tx.add(Place(code="quay", name="Quay", kind="stall")))
    raw = sqlite3.connect(book.path)
    assert raw.execute("SELECT count(*) FROM place WHERE code = 'quay'").fetchone()[0] == 0
    assert len(entries(book.path)) == 1


def test_after_a_failure_the_next_entry_takes_the_number(book: Book) -> None:
    with pytest.raises(Refused), book.write("stall add"):
        raise Refused("no")
    with book.write("stall add") as tx:
        tx.add(Place(code="quay", name="Quay", kind="stall"))
        tx.say("Added stall Quay.")
    assert [row[0] for row in entries(book.path)] == [1, 2]


def test_an_operation_must_say_what_it_did(book: Book) -> None:
    with pytest.raises(AssertionError, match="did not say"), book.write("stall add") as tx:
        tx.add(Place(code="quay", name="Quay", kind="stall"))
    assert len(entries(book.path)) == 1


def test_the_moment_is_stored_in_utc(tmp_path: Path, book: Book) -> None:
    summer = timezone(timedelta(hours=1))
    late = Book(tmp_path / "soap.db", who="Nuala", now=lambda: datetime(2026, 6, 2, 0, 15, tzinfo=summer))
    with late.write("note") as tx:
        tx.say("Nothing.")
    late.close()
    assert entries(book.path)[1][4] == "2026-06-01T23:15:00Z"


def test_views_read_what_the_same_operation_wrote(book: Book) -> None:
    with book.write("stall add") as tx:
        tx.add(Place(code="quay", name="Quay", kind="stall"))
        assert tx.rows.execute("SELECT name FROM live_place WHERE code = 'quay'").fetchone()["name"] == "Quay"
        tx.say("Added stall Quay.")


def test_a_ledger_that_exists_is_not_started_again(book: Book) -> None:
    before = book.path.read_bytes()
    with pytest.raises(Refused, match="already"):
        Book.create(book.path, who="Nuala", now=datetime.now)
    assert book.path.read_bytes() == before


def test_a_ledger_is_not_started_in_a_folder_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="no folder"):
        Book.create(tmp_path / "nowhere" / "soap.db", who="Nuala", now=datetime.now)


def test_there_must_be_a_ledger_to_open(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="soapledger init"):
        Book(tmp_path / "other.db", who="Nuala", now=datetime.now)


def test_another_programs_file_is_left_alone(tmp_path: Path) -> None:
    raw = sqlite3.connect(tmp_path / "other.db")
    raw.execute("CREATE TABLE songs (title)")
    raw.close()
    with pytest.raises(DamagedLedger, match="not a soapledger file"):
        Book(tmp_path / "other.db", who="Nuala", now=datetime.now)


def test_the_file_says_what_it_is(book: Book) -> None:
    raw = sqlite3.connect(book.path)
    assert raw.execute("PRAGMA application_id").fetchone()[0] == APPLICATION_ID
    assert raw.execute("PRAGMA journal_mode").fetchone()[0] == "delete"


def test_nothing_stays_beside_the_file(tmp_path: Path, book: Book) -> None:
    with book.write("note") as tx:
        tx.say("Nothing.")
    assert [path.name for path in tmp_path.iterdir()] == ["soap.db"]


def test_between_two_operations_the_book_can_be_read_but_not_written(book: Book) -> None:
    with book.look() as rows:
        assert rows.execute("SELECT count(*) FROM live_place").fetchone()[0] == 3
        with pytest.raises(sqlite3.OperationalError, match="readonly"):
            rows.execute("CREATE TABLE songs (title)")
