"""How two files of a ledger stand to each other is told by their entries alone, one by one."""

import shutil
import sqlite3
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import Refused
from ledger.operations.sell.add_stall import add_stall
from ledger.storage.book import Book
from ledger.storage.compared import Compared, compared

Copy = Callable[..., Path]


@pytest.fixture
def copied(shop: Any, tmp_path: Path) -> Copy:
    """A copy of the shop's 14 entries, with a stall added to it for each name."""

    def make(name: str, *stalls: str) -> Path:
        path = tmp_path / name
        shutil.copyfile(shop.book.path, path)
        book = Book(path, who="Orla", now=shop.book._now)
        for stall in stalls:
            add_stall(book, stall)
        book.close()
        return path

    return make


@pytest.mark.parametrize(
    ("ours", "theirs", "told"),
    [
        ((), (), Compared("the same", 14, 14, 14)),
        (("Quay",), (), Compared("ours goes on", 14, 15, 14)),
        ((), ("Quay", "Hill"), Compared("theirs goes on", 14, 14, 16)),
        (("Quay",), ("Fair", "Hill"), Compared("they part", 14, 15, 16)),
    ],
)
def test_two_files_of_one_ledger(copied: Copy, ours: tuple[str, ...], theirs: tuple[str, ...], told: Compared) -> None:
    assert compared(copied("ours.db", *ours), copied("theirs.db", *theirs)) == told


def test_copies_that_went_on_apart_part_after_what_both_hold(shop: Any, copied: Copy, tmp_path: Path) -> None:
    first = copied("first.db", "Quay")
    for name in ("ours.db", "theirs.db"):
        shutil.copyfile(first, tmp_path / name)
        book = Book(tmp_path / name, who="Orla", now=shop.book._now)
        add_stall(book, f"Fair of {name}")
        book.close()
    assert compared(tmp_path / "ours.db", tmp_path / "theirs.db") == Compared("they part", 15, 16, 16)


def test_ledgers_that_share_no_entry_are_no_relation(copied: Copy, shop: Any, tmp_path: Path) -> None:
    ours = copied("ours.db")
    Book.create(tmp_path / "new.db", who="Nuala", now=shop.book._now).close()
    assert compared(ours, tmp_path / "new.db") == Compared("no relation", 0, 14, 0)
    other = Book(tmp_path / "new.db", who="Nuala", now=shop.book._now)
    add_stall(other, "Quay")
    other.close()
    assert compared(ours, tmp_path / "new.db") == Compared("no relation", 0, 14, 1)


def test_an_entry_missing_in_the_midst_makes_them_part(copied: Copy) -> None:
    ours, theirs = copied("ours.db"), copied("theirs.db")
    raw = sqlite3.connect(theirs, isolation_level=None)
    raw.execute("DROP TRIGGER entry_never_deleted")
    raw.execute("DELETE FROM entry WHERE id = 9")
    raw.close()
    assert compared(ours, theirs) == Compared("they part", 8, 14, 14)


def test_what_is_no_ledger_or_torn_off_is_unreadable(copied: Copy, tmp_path: Path) -> None:
    ours, torn, text = copied("ours.db"), tmp_path / "torn.db", tmp_path / "text.db"
    torn.write_bytes(ours.read_bytes()[:4096])
    text.write_text("no ledger", encoding="utf-8")
    assert compared(ours, torn) == compared(ours, text) == compared(ours, tmp_path) == Compared("unreadable")


def test_a_file_that_another_program_writes_is_not_called_unreadable(
    copied: Copy, monkeypatch: pytest.MonkeyPatch
) -> None:
    ours, theirs = copied("ours.db"), copied("theirs.db")
    connect = sqlite3.connect
    monkeypatch.setattr(sqlite3, "connect", lambda *args, **more: connect(*args, **{**more, "timeout": 0}))
    writing = connect(theirs, isolation_level=None)
    writing.execute("BEGIN EXCLUSIVE")
    with pytest.raises(Refused, match="try again"):
        compared(ours, theirs)
    writing.close()
