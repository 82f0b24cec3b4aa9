"""What SQLite says is told in her words, with the right exit code."""

import sqlite3
from pathlib import Path

import pytest

from ledger.errors import DamagedLedger, Refused
from ledger.fileformat import trouble


def test_a_full_disk_is_a_refusal(tmp_path: Path) -> None:
    raw = sqlite3.connect(tmp_path / "small.db")
    raw.execute("PRAGMA max_page_count = 3")
    raw.execute("CREATE TABLE t (x)")
    with pytest.raises(sqlite3.OperationalError) as caught:
        raw.execute("INSERT INTO t VALUES (zeroblob(100000))")
    meaning = trouble(caught.value)
    assert isinstance(meaning, Refused)
    assert "disk is full" in str(meaning)


def test_a_file_of_something_else_is_damage(tmp_path: Path) -> None:
    (tmp_path / "x.db").write_bytes(b"x" * 5000)
    with pytest.raises(sqlite3.DatabaseError) as caught:
        sqlite3.connect(tmp_path / "x.db").execute("SELECT * FROM t")
    assert isinstance(trouble(caught.value), DamagedLedger)


def test_a_write_to_a_read_only_file_is_a_refusal(tmp_path: Path) -> None:
    sqlite3.connect(tmp_path / "x.db").execute("CREATE TABLE t (x)")
    raw = sqlite3.connect(f"file:{tmp_path / 'x.db'}?mode=ro", uri=True)
    with pytest.raises(sqlite3.OperationalError) as caught:
        raw.execute("INSERT INTO t VALUES (1)")
    assert isinstance(trouble(caught.value), Refused)


def test_a_guard_speaks_for_itself() -> None:
    assert str(trouble(sqlite3.IntegrityError("guard: Only so many are here."))) == (
        "Only so many are here. Nothing was written."
    )


def test_a_mistake_of_ours_is_not_hidden() -> None:
    with pytest.raises(sqlite3.OperationalError) as caught:
        sqlite3.connect(":memory:").execute("SELECT * FROM no_such_table")
    assert trouble(caught.value) is None
    assert trouble(ValueError("x")) is None
