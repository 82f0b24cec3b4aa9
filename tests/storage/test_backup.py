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


@pytest.mark.usefixtures("frozen")
def test_a_damaged_ledger_is_saved_under_a_new_name_and_told_as_damaged(full: Any, run: Any, tmp_path: Path) -> None:
    tamper(full.book.path)
    done = run("backup", "copy.db", code=3)
    assert done.stdout == "copy.db holds all that is in soap.db, as it is.\n"
    assert "1 thing is wrong in soap.db:\n  entry 8 (Received 4 lots" in done.stderr
    assert [one.entry for one in check(open_rows(tmp_path / "copy.db")).findings] == [8]
    told = run("backup", "copy.db", "--force", code=3)  # over a copy that is damaged too
    assert "holds all that is in soap.db" in told.stdout


@pytest.mark.usefixtures("frozen")
def test_a_torn_ledger_is_saved_as_far_as_there_is_one(
    full: Any, run: Any, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    full.book.close()
    whole = full.book.path.read_bytes()
    for share in (0.02, 0.35, 0.9):
        full.book.path.write_bytes(whole[: int(len(whole) * share)])
        done = run("backup", f"copy-{share}.db", code=3)
        assert "holds all that is in soap.db, as it is." in done.stdout
        assert "thing" in done.stderr.splitlines()[0]
        kept = (tmp_path / f"copy-{share}.db").read_bytes()
        assert kept[200:4000] == whole[200:4000]
    for start in range(4096, len(whole), 4096 * (9 if request.config.getoption("--slow") else 41)):
        full.book.path.write_bytes(whole[:start] + bytes(4096) + whole[start + 4096 :])
        run("backup", f"zeros-{start}.db", code=3)
        assert (tmp_path / f"zeros-{start}.db").read_bytes()[start + 4096 :] == whole[start + 4096 :]
    full.book.path.write_text("notes on soap", encoding="utf-8")
    run("backup", "notes.db", code=3)
    assert not (tmp_path / "notes.db").exists()


@pytest.mark.parametrize("name", ["soap.db", "nowhere/copy.db", "."])
def test_a_copy_needs_a_place_of_its_own(full: Any, tmp_path: Path, name: str) -> None:
    before = full.book.path.read_bytes()
    with pytest.raises((BadInput, Refused)):
        keep_copy(full.book.path, tmp_path / name, overwrite=True)
    assert full.book.path.read_bytes() == before
