"""A file that is cut short, not ours, or not there is told in one line, never by a traceback."""

import os
import sqlite3
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import DamagedLedger
from ledger.operations.keep.check import check
from ledger.rows.opened import open_rows

pytestmark = pytest.mark.usefixtures("frozen")


def whole_file(shop: Any) -> bytes:
    shop.book.close()
    return shop.book.path.read_bytes()  # type: ignore[no-any-return]


@pytest.mark.parametrize("share", [0.1, 0.35, 0.6, 0.9, 0.99])
def test_a_truncated_file_is_told_as_damaged(full: Any, run: Any, share: float) -> None:
    whole = whole_file(full)
    full.book.path.write_bytes(whole[: int(len(whole) * share)])
    assert "backup" in run("check", code=3).stderr


def test_a_file_cut_at_any_page_is_told_as_damaged(full: Any) -> None:
    whole = whole_file(full)
    for end in range(4096, len(whole), 4096):
        full.book.path.write_bytes(whole[:end])
        try:
            findings = check(open_rows(full.book.path)).findings
        except (DamagedLedger, sqlite3.DatabaseError):
            continue
        assert findings, f"cut after {end} of {len(whole)} bytes"


def test_a_page_of_zeros_inside_the_file_is_told_as_damaged(
    full: Any, run: Any, request: pytest.FixtureRequest
) -> None:
    whole = whole_file(full)
    step = 9 if request.config.getoption("--slow") else 29  # some of them in each run
    for start in range(4096, len(whole), 4096 * step):
        full.book.path.write_bytes(whole[:start] + bytes(4096) + whole[start + 4096 :])
        run("check", code=3)


@pytest.mark.parametrize("content", [b"", b"notes on soap\n" * 400, bytes(8192)], ids=["empty", "text", "zeros"])
def test_a_file_that_is_no_ledger_is_told_so(tmp_path: Path, run: Any, content: bytes) -> None:
    (tmp_path / "soap.db").write_bytes(content)
    for words in (["stock"], ["check"], ["supplier", "add", "Tarnlow"], ["init", "--business", "X"]):
        done = run(*words, code=3)
        assert done.stderr.count("\n") == 1
    assert (tmp_path / "soap.db").read_bytes() == content


def test_another_programs_database_is_told_so_and_left_alone(tmp_path: Path, run: Any) -> None:
    raw = sqlite3.connect(tmp_path / "soap.db")
    raw.execute("CREATE TABLE songs (title)")
    raw.close()
    before = (tmp_path / "soap.db").read_bytes()
    assert "not a soapledger file" in run("stock", code=3).stderr
    assert (tmp_path / "soap.db").read_bytes() == before


def test_what_is_no_file_is_told_in_one_line(tmp_path: Path, run: Any) -> None:
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")
    for name in ("folder", "pipe", "/dev/zero"):
        for words in (["stock"], ["supplier", "add", "X"], ["backup", "copy.db"], ["check"]):
            told = run("--ledger", name, *words, code=3).stderr
            assert told == f"{name} is no file but a folder, a pipe or a device; name the ledger with --ledger FILE.\n"


def test_no_ledger_at_all_says_how_to_start_one(run: Any) -> None:
    assert "soapledger init" in run("stock", code=2).stderr
