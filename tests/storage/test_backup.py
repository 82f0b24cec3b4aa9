"""A copy is whole, checked, and takes nobody's place unasked."""

import sqlite3
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.operations.keep.backup import keep_copy
from ledger.operations.keep.check import check
from ledger.rows.opened import open_rows


def tamper(path: Path) -> None:
    """Change a milligram behind the ledger's back, and put the guard back."""
    raw = sqlite3.connect(path, isolation_level=None)
    guard = raw.execute("SELECT sql FROM sqlite_schema WHERE name = 'movement_never_changed'").fetchone()[0]
    raw.execute("DROP TRIGGER movement_never_changed")
    raw.execute("UPDATE movement SET quantity = quantity + 1 WHERE id = 1")
    raw.execute(guard)
    raw.close()


def test_a_copy_holds_every_entry_and_passes_the_check(full: Any, tmp_path: Path) -> None:
    verdict = keep_copy(full.book.path, tmp_path / "copy.db", overwrite=False)
    copied = check(open_rows(tmp_path / "copy.db"))
    assert copied == check(open_rows(full.book.path)) == verdict
    assert not list(tmp_path.glob(".soapledger*"))


def test_an_older_copy_is_kept_unless_told_otherwise(full: Any, tmp_path: Path) -> None:
    target = tmp_path / "copy.db"
    target.write_text("an older copy", encoding="utf-8")
    with pytest.raises(BadInput, match="--force"):
        keep_copy(full.book.path, target, overwrite=False)
    assert target.read_text(encoding="utf-8") == "an older copy"
    keep_copy(full.book.path, target, overwrite=True)
    assert check(open_rows(target)).findings == ()


def test_a_damaged_ledger_does_not_take_the_place_of_a_sound_copy(full: Any, tmp_path: Path) -> None:
    target = tmp_path / "copy.db"
    keep_copy(full.book.path, target, overwrite=False)
    sound = target.read_bytes()
    tamper(full.book.path)
    with pytest.raises(DamagedLedger, match="soapledger check"):
        keep_copy(full.book.path, target, overwrite=True)
    assert target.read_bytes() == sound
    assert not list(tmp_path.glob(".soapledger*"))


@pytest.mark.parametrize("name", ["soap.db", "nowhere/copy.db", "."])
def test_a_copy_needs_a_place_of_its_own(full: Any, tmp_path: Path, name: str) -> None:
    before = full.book.path.read_bytes()
    with pytest.raises((BadInput, Refused)):
        keep_copy(full.book.path, tmp_path / name, overwrite=True)
    assert full.book.path.read_bytes() == before
