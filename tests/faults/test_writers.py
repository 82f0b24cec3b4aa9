"""Two programs at once, and one that dies in the middle of writing."""

import multiprocessing
import os
import random
import sqlite3
import time
from datetime import UTC, datetime
from multiprocessing.connection import Connection
from multiprocessing.context import ForkProcess
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import Refused
from ledger.operations.keep.check import check
from ledger.rows.opened import open_rows
from ledger.rows.settings import settings
from ledger.storage import book as book_module
from ledger.storage.book import Book
from ledger.storage.tables.stock import Place

FORKS = multiprocessing.get_context("fork")  # a new interpreter would import for half a second before it writes


def write(path: Path, name: str, turns: int, rows: int, told: Connection) -> None:
    """Write entries of 40 rows one after the other, and `rows` rows in one more, which stays open until killed."""
    book = Book(path, who="child", now=lambda: datetime.now(UTC))
    for turn in range(turns):
        with book.write("stall add") as tx:
            tx.add_all(Place(code=f"{name}-{turn}-{n}", name="x", kind="stall") for n in range(40))
            tx.say("Added stalls.")
            if turn == 0:
                told.send("wrote")
    if rows:
        with book.write("stall add") as tx:
            tx.rows.execute("PRAGMA cache_size = 10")  # pages go to the file before the end, as in a long write
            tx.add_all(Place(code=f"late-{n}", name="x" * 200, kind="stall") for n in range(rows))
            told.send("open")
            time.sleep(60)


def start(book: Book, name: str, *, turns: int, rows: int = 0) -> tuple[ForkProcess, Connection]:
    """Another process that writes, and what it tells meanwhile; nothing of the file is open when it begins."""
    book.close()
    told, tells = FORKS.Pipe(duplex=False)
    child = FORKS.Process(target=write, args=(book.path, name, turns, rows, tells), daemon=True)
    child.start()
    tells.close()  # so that the end of the other process ends what is told
    return child, told


def entries(path: Path) -> int:
    rows = open_rows(path)
    found = int(rows.execute("SELECT count(*) FROM entry").fetchone()[0])
    rows.close()
    return found


def test_two_writers_take_turns_and_every_entry_is_chained(book: Book) -> None:
    child, told = start(book, "ann", turns=12)
    assert told.recv() == "wrote"
    for turn in range(12):
        with book.write("stall add") as tx:
            tx.add_all(Place(code=f"bob-{turn}-{n}", name="x", kind="stall") for n in range(40))
            tx.say("Added stalls.")
    child.join(timeout=120)
    assert child.exitcode == 0
    assert entries(book.path) == 1 + 2 * 12
    assert check(open_rows(book.path)).findings == ()


def test_who_cannot_wait_any_longer_is_told_so_and_writes_nothing(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(book_module, "PATIENCE", 0.1)
    other = sqlite3.connect(book.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    late = Book(book.path, who="Nuala", now=lambda: pytest.fail("nothing is written"))
    with pytest.raises(Refused, match="Another soapledger is using"), late.write("note"):
        pass
    other.execute("ROLLBACK")
    late.close()
    assert entries(book.path) == 1


def test_a_reader_is_not_kept_out_while_another_writes(book: Book) -> None:
    with book.write("note") as tx:
        assert settings(open_rows(book.path)).business == "Tidewrack Soaps"
        tx.say("Nothing.")


@pytest.mark.skipif(os.name == "nt", reason="there is no such signal")
def test_a_program_killed_in_the_middle_of_writing_leaves_the_ledger_as_it_was(book: Book, run: Any) -> None:
    child, told = start(book, "ann", turns=1, rows=4000)
    assert (told.recv(), told.recv()) == ("wrote", "open")
    child.kill()
    child.join()
    journal = book.path.with_name("soap.db-journal")
    assert journal.stat().st_size > 0  # what the next reader has to roll back
    assert "stall" not in run("stock").stdout  # a reader alone puts it right
    assert not journal.exists()
    assert entries(book.path) == 2
    assert check(open_rows(book.path)).findings == ()


def test_stopping_by_hand_in_the_middle_writes_nothing(book: Book) -> None:
    with pytest.raises(KeyboardInterrupt), book.write("note"):
        raise KeyboardInterrupt
    assert entries(book.path) == 1


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="there is no such signal")
def test_a_program_killed_at_any_moment_leaves_whole_entries(book: Book) -> None:
    chance = random.Random(20260601)
    for turn in range(80):
        child, told = start(book, f"t{turn}", turns=200)
        told.recv()
        time.sleep(chance.uniform(0, 0.5))
        child.kill()
        child.join()
        assert check(open_rows(book.path)).findings == ()


@pytest.mark.slow
def test_four_writers_of_250_entries_each_lose_none_and_every_check_beside_them_is_clean(book: Book) -> None:
    children = [start(book, name, turns=250)[0] for name in ("ann", "bob", "cat", "dot")]
    checked = 0
    while any(child.is_alive() for child in children):
        rows = open_rows(book.path)
        assert check(rows).findings == ()
        rows.close()
        checked += 1
        time.sleep(0.2)  # else no writer gets a turn within its patience
    assert [child.exitcode for child in children] == [0, 0, 0, 0]
    assert checked > 10
    assert entries(book.path) == 1 + 4 * 250
