"""An answer reads one state of the ledger, whoever writes meanwhile; and no answer keeps a writer out for long."""

import multiprocessing
import re
import sqlite3
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

import pytest
import typer

from ledger.cli.kit import show
from ledger.cli.kit.desk import Desk
from ledger.fileformat import SCHEMA_VERSION
from ledger.operations.keep.check import Verdict, check, look_quickly
from ledger.operations.sell.add_stall import add_stall
from ledger.rows import opened as reading
from ledger.rows.opened import Rows, as_known, one_state, open_rows
from ledger.storage import book as book_module
from ledger.storage.book import Book


def write_on(path: Path, pause: float, told: Connection) -> None:
    """Write one entry after the other until stopped."""
    book = Book(path, who="child", now=lambda: datetime.now(UTC))
    told.send("open")
    number = 0
    while True:
        number += 1
        add_stall(book, f"Market {number}")
        time.sleep(pause)


@pytest.fixture
def writer(shop: Any, request: pytest.FixtureRequest) -> Iterator[None]:
    """Another process that never stops writing to the ledger of the shop; a parameter gives its pauses in seconds."""
    shop.book.close()
    forks = multiprocessing.get_context("fork")
    told, tells = forks.Pipe(duplex=False)
    child = forks.Process(target=write_on, args=(shop.book.path, getattr(request, "param", 0), tells), daemon=True)
    child.start()
    tells.close()
    assert told.recv() == "open"
    yield
    assert child.is_alive(), "the writer was kept out, or failed"
    child.kill()
    child.join()


@pytest.mark.usefixtures("writer")
def test_a_check_beside_a_writer_finds_nothing(shop: Any) -> None:
    checked = []
    for _ in range(8):
        rows = open_rows(shop.book.path)
        verdict = check(rows)
        rows.close()
        assert verdict.findings == ()
        checked.append(verdict.entries)
    assert checked == sorted(checked)
    assert checked[-1] > checked[0]  # it did write meanwhile


@pytest.mark.usefixtures("writer")
@pytest.mark.parametrize("writer", [0.05], indirect=True)  # without a pause no other writer would have its turn
def test_commands_beside_a_writer_answer_and_find_nothing(shop: Any, run: Any) -> None:
    for turn in range(2):
        assert "nothing is wrong" in run("check").stdout
        assert "checked" in run("backup", f"copy-{turn}.db").stdout
        run("stock")
        run("batch", "show", shop.batch, "--as-of", "14")
        run("customer", "add", f"Number {turn}", "--shop")


def attempt(book: Book, name: str) -> Callable[[], bool]:
    """A try to write an entry without waiting; whether it was written."""

    def write() -> bool:
        try:
            add_stall(book, name)
        except book_module.Refused:
            return False
        return True

    return write


@pytest.fixture
def hasty(shop: Any, monkeypatch: pytest.MonkeyPatch) -> Book:
    """The ledger of the shop, held by another program that does not wait for a reader."""
    monkeypatch.setattr(book_module, "PATIENCE", 0.0)
    return Book(shop.book.path, who="another", now=shop.book._now)


def test_between_two_statements_of_one_answer_nothing_can_be_written(shop: Any, hasty: Book) -> None:
    write, rows = attempt(hasty, "Quay market"), shop.rows()
    with one_state(rows):
        first = rows.execute("SELECT count(*) FROM entry").fetchone()[0]
        assert not write()
        assert rows.execute("SELECT max(id) FROM entry").fetchone()[0] == first
    assert write()
    assert rows.execute("SELECT max(id) FROM entry").fetchone()[0] == first + 1


def test_without_one_state_the_second_statement_sees_what_the_first_did_not(shop: Any, hasty: Book) -> None:
    """What the test above would show, were it not for the state held."""
    rows = shop.rows()
    first = rows.execute("SELECT count(*) FROM entry").fetchone()[0]
    assert attempt(hasty, "Quay market")()
    assert rows.execute("SELECT max(id) FROM entry").fetchone()[0] == first + 1


READS = [
    ("stock",),
    ("batch", "list"),
    ("batch", "show", "BATCH"),
    ("batch", "show", "BATCH", "--as-of", "12"),
    ("batch", "show", "BATCH", "--as-of", "2026-06-01"),
    ("label", "check", "BATCH", "--market", "eu"),
    ("label", "due"),
    ("recall", "lot", "4471/2"),
    ("trace", "BATCH"),
    ("cost", "BATCH"),
    ("cost",),
    ("cure", "list"),
    ("cure", "show", "BATCH"),
    ("lot", "show", "OLIVE"),
    ("material", "show", "olive-oil"),
    ("supplier", "show", "tarnlow"),
    ("recipe", "show", "plain-bar"),
    ("equipment", "list"),
    ("upkeep", "list"),
    ("history",),
    ("check",),
]


def commit(other: sqlite3.Connection) -> bool:
    """Whether another program can write something into the file now, without waiting."""
    try:
        other.execute("BEGIN IMMEDIATE")
        other.execute(f"PRAGMA user_version = {SCHEMA_VERSION}")
        other.execute("COMMIT")
    except sqlite3.OperationalError:
        if other.in_transaction:
            other.execute("ROLLBACK")
        return False
    return True


def watched(rows: Rows, other: sqlite3.Connection, tries: list[bool]) -> Rows:
    """The rows, where another program tries to write before every statement."""

    def before(statement: str) -> None:
        if re.match(r"\s*(SELECT|WITH)", statement):
            tries.append(commit(other))

    rows.set_trace_callback(before)
    return rows


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize("words", READS, ids=" ".join)
def test_an_answer_is_of_one_state(
    shop: Any, run: Any, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    """Another program tries to write before every statement; it can before the first is read and after the last."""
    tries: list[bool] = []
    opened = open_rows
    other = sqlite3.connect(shop.book.path, isolation_level=None, timeout=0)
    monkeypatch.setattr(reading, "open_rows", lambda path: watched(opened(path), other, tries))
    run(*({"BATCH": shop.batch, "OLIVE": shop.olive}.get(word, word) for word in words))
    assert tries
    assert not any(tries[1:]), f"{tries.count(True)} of {len(tries)} tries to write came between"
    assert commit(other)
    other.close()


@pytest.mark.parametrize("look", [check, look_quickly])
def test_a_check_holds_one_state_itself(shop: Any, look: Callable[[Rows], Verdict]) -> None:
    tries: list[bool] = []
    other = sqlite3.connect(shop.book.path, isolation_level=None, timeout=0)
    assert look(watched(open_rows(shop.book.path), other, tries)).findings == ()
    first = tries.index(False)  # whether a newer program laid the rules is asked before
    assert not any(tries[first:])
    assert len(tries) > 10 * (first + 1)
    assert commit(other)
    other.close()


def test_before_she_is_asked_others_may_write(
    shop: Any, run: Any, hasty: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("customer", "add", "Orla Fenn", "--person")
    monkeypatch.setattr(show, "_fed", lambda: True)
    asked: list[bool] = []

    def answer(*_: object, **__: object) -> bool:
        asked.append(attempt(hasty, f"Market {len(asked)}")())
        return True

    monkeypatch.setattr(typer, "confirm", answer)
    run("customer", "erase", "person-1", "--reason", "asked")
    stall = shop.rows().execute("SELECT max(id) FROM entry WHERE verb = 'stall add'").fetchone()[0]
    run("undo", str(stall))
    assert asked == [True, True]
    assert check(shop.rows()).findings == ()


def test_while_a_long_list_is_paged_through_others_may_write(
    run: Any, shop: Any, hasty: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    tries: list[bool] = []
    shown = show.say

    def say(text: str = "") -> None:
        shown(text)
        if text.startswith("  entry"):
            tries.append(attempt(hasty, "Quay market")())

    monkeypatch.setattr(show, "say", say)
    run("history")
    assert tries == [True]
    assert "Market" not in shop.batch


def test_what_was_read_before_does_not_keep_the_own_entry_out(shop: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(book_module, "PATIENCE", 0.0)
    here = Desk(shop.book.path)
    book = here.book()
    before = here.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    add_stall(book, "Quay market")
    assert here.rows().execute("SELECT max(id) FROM entry").fetchone()[0] == before + 1


def test_as_of_an_entry_an_answer_is_of_one_state_too(shop: Any, hasty: Book) -> None:
    here = Desk(shop.book.path)
    rows = here.rows_as_of("3")
    assert rows.execute("SELECT max(id) FROM entry").fetchone()[0] == 3
    assert not attempt(hasty, "Quay market")()
    here.let_go()
    assert attempt(hasty, "Quay market")()
    assert rows.execute("SELECT max(id) FROM entry").fetchone()[0] == 3


def test_between_two_operations_one_look_is_of_one_state(shop: Any, hasty: Book) -> None:
    with shop.book.look() as rows:
        before = rows.execute("SELECT max(id) FROM entry").fetchone()[0]
        assert not attempt(hasty, "Quay market")()
        assert rows.execute("SELECT count(*) FROM entry").fetchone()[0] == before
    assert attempt(hasty, "Quay market")()
    as_known(shop.rows(), before)
