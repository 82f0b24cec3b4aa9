"""A clock that jumped is said, nothing is refused for it, and a day asked for is not misled by it."""

import sqlite3
from contextlib import closing
from typing import Any

import pytest

from ledger.domain.keep.clock import written_by
from ledger.storage import book as book_module

DAYS = ["2026-11-23", "2026-11-24", "2026-11-25", "2026-11-26"]


@pytest.mark.parametrize(
    ("times", "moment", "first"),
    [
        ([], "2026-11-25", 0),
        (DAYS, "2026-11-23", 0),  # what was written at the moment is not before it
        (DAYS, "2026-11-24", 1),
        (DAYS, "2026-11-27", 4),
        (["2026-11-24", "2026-11-24"], "2026-11-24", 0),
        (["2026-11-24", "2026-11-24"], "2026-11-25", 2),
        # the clock fell back for the third entry, as with an empty battery
        (["2026-11-23", "2026-11-24", "1970-01-01", "2026-11-25"], "2026-01-01", 0),
        (["2026-11-23", "2026-11-24", "1970-01-01", "2026-11-25"], "2026-11-24", 1),
        (["2026-11-23", "2026-11-24", "1970-01-01", "2026-11-25"], "2026-11-25", 3),
        (["2026-11-23", "2026-11-24", "1970-01-01", "2026-11-25"], "2026-11-26", 4),
        # it ran ahead for the second one
        (["2026-11-23", "2031-01-01", "2026-11-24", "2026-11-25"], "2026-11-24", 2),
        (["2026-11-23", "2031-01-01", "2026-11-24", "2026-11-25"], "2026-11-25", 3),
        (["2026-11-23", "2031-01-01", "2026-11-24", "2026-11-25"], "2026-11-26", 4),
        # and at the very first
        (["2031-01-01", "2026-11-24", "2026-11-25"], "2026-11-24", 0),
        (["2031-01-01", "2026-11-24", "2026-11-25"], "2026-11-25", 2),
    ],
)
def test_the_entries_written_by_a_day_whatever_the_clock_did(times: list[str], moment: str, first: int) -> None:
    assert written_by(times, moment) == first


@pytest.mark.parametrize(("moment", "said"), [("2026-06-01T09:29:59Z", True), ("2026-06-01T09:30:00Z", False)])
@pytest.mark.usefixtures("shop")
def test_a_clock_before_the_last_entry_is_said_and_nothing_refused(
    run: Any, frozen: Any, moment: str, said: bool
) -> None:
    """The last entry is of 1 Jun 2026, 09:30 UTC, which is 10:30 in Dublin."""
    frozen.move_to(moment)
    done = run("supplier", "add", "Ottersby")
    words = (
        "The clock of this computer stands at 1 Jun 2026 10:29, before the last entry (1 Jun 2026 10:30); set it right."
    )
    assert done.stderr == (f"{words}\n" if said else "")
    assert "Ottersby" in run("supplier", "list").stdout
    assert run("stock").stderr == ""


def test_a_record_as_of_a_day_is_not_misled(shop: Any, run: Any, frozen: Any) -> None:
    frozen.move_to("1999-12-31T12:00:00Z")
    run("supplier", "add", "Ottersby")
    frozen.move_to("2026-06-02T12:00:00Z")
    assert "by then" in run("batch", "show", shop.batch, "--as-of", "2000-01-01", code=2).stderr
    assert "Plain Bar" in run("batch", "show", shop.batch, "--as-of", "2026-06-01").stdout


def test_a_ledger_that_another_program_put_into_wal_is_brought_back(shop: Any, run: Any, frozen: Any) -> None:  # noqa: ARG001
    shop.book.close()
    with closing(sqlite3.connect(shop.book.path)) as raw:
        assert raw.execute("PRAGMA journal_mode = WAL").fetchone()[0] == "wal"
    done = run("supplier", "add", "Ottersby")
    assert done.stderr.count("\n") == 1
    assert "it was set back" in done.stderr
    with closing(sqlite3.connect(shop.book.path)) as raw:
        assert raw.execute("PRAGMA journal_mode").fetchone()[0] == "delete"
    assert run("supplier", "list").stderr == ""
    assert "nothing is wrong" in run("check").stdout


def test_a_ledger_in_wal_that_is_open_elsewhere_is_read_and_says_why_it_is_not_written(
    shop: Any, run: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(book_module, "PATIENCE", 0.1)
    shop.book.close()
    with closing(sqlite3.connect(shop.book.path)) as raw:
        raw.execute("PRAGMA journal_mode = WAL")
        raw.execute("BEGIN")
        raw.execute("SELECT count(*) FROM lot").fetchone()
        assert "olive oil" in run("stock").stdout
        assert "using this ledger" in run("supplier", "add", "Ottersby", code=1).stderr
