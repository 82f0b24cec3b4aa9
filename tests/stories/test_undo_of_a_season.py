"""Every entry of the played season taken back where that is allowed: what is left is clean, and adds up by itself."""

import shutil
import sqlite3
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from shop import NOW

import ledger.operations.season.play  # noqa: F401 - its tables, before the clock is frozen
from ledger.errors import Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.rows.opened import open_rows
from ledger.storage.book import Book

EVERY_SO_MANY = 40  # entries, where not all of them are taken back


def balances(path: Path) -> Counter[tuple[int, int]]:
    """What is on hand of each lot at each place, from the movements of entries that stand, summed here."""
    raw = sqlite3.connect(path)
    gone = {
        number for pair in raw.execute("SELECT id, reverses FROM entry WHERE reverses IS NOT NULL") for number in pair
    }
    held: Counter[tuple[int, int]] = Counter()
    for entry, lot, place, quantity in raw.execute("SELECT entry_id, lot_id, place_id, quantity FROM movement"):
        if entry not in gone:
            held[lot, place] += quantity
    raw.close()
    return Counter({key: quantity for key, quantity in held.items() if quantity})


def told(path: Path) -> Counter[tuple[int, int]]:
    """The same as the ledger sums it: every movement, mirrored ones too."""
    raw = sqlite3.connect(path)
    query = "SELECT lot_id, place_id, sum(quantity) FROM movement GROUP BY 1, 2 HAVING sum(quantity) <> 0"
    found = Counter({(lot, place): held for lot, place, held in raw.execute(query)})
    raw.close()
    return found


@pytest.mark.parametrize("every", [EVERY_SO_MANY, pytest.param(1, marks=pytest.mark.slow)])
def test_what_is_left_is_clean_and_adds_up(play: Any, tmp_path: Path, every: int) -> None:
    path = tmp_path / "soap.db"
    shutil.copyfile(play("2026-11-25").folder / "soap.db", path)
    raw = sqlite3.connect(path)
    entries = raw.execute("SELECT max(id) FROM entry").fetchone()[0]
    raw.close()
    book = Book(path, who="Nuala", now=lambda: NOW)
    taken_back = 0
    for entry in range(entries, 0, -every):
        try:
            undo(book, entry)
        except Refused:
            continue
        taken_back += 1
        if taken_back % 10 == 0 or every > 1:
            assert balances(path) == told(path), entry
    book.close()
    assert taken_back > 0
    assert check(open_rows(path)).findings == ()
    assert balances(path) == told(path)
