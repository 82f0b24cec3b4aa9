"""check, undo, history and backup at the command line."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ledger.operations.stock.lots import waste_lot
from ledger.rows.opened import open_rows
from ledger.units.seals import seal_of

pytestmark = pytest.mark.usefixtures("frozen")


def spill(shop: Any) -> None:
    """Entry 15 of the shop."""
    waste_lot(shop.book, shop.olive, 400_000, place=None, on=date(2026, 6, 1), reason="spilt")


@pytest.mark.usefixtures("shop")
def test_check_says_how_much_it_looked_at(run: Any) -> None:
    assert run("check").stdout.startswith("14 entries checked; nothing is wrong.")


def test_check_as_json(shop: Any, run: Any) -> None:
    answer = json.loads(run("check", "--json").stdout)
    head = shop.rows().execute("SELECT digest FROM entry WHERE id = 14").fetchone()[0]
    assert answer == {"entries": 14, "head": head, "seal": seal_of(14, head).text, "findings": [], "remarks": []}


def test_undo_without_a_number_takes_back_the_last_entry(shop: Any, run: Any) -> None:
    spill(shop)
    done = run("undo", input="y\n")
    assert "Take back entry 15" in done.stderr
    assert "Entry 15 is taken back: Threw away" in done.stdout


def test_undo_asks_first_and_a_no_writes_nothing(shop: Any, run: Any) -> None:
    spill(shop)
    before = shop.book.path.read_bytes()
    run("undo", "15", input="n\n", code=1)
    assert shop.book.path.read_bytes() == before


def test_undo_of_a_receipt_that_a_batch_used_names_the_batch(shop: Any, run: Any) -> None:
    refusal = run("undo", "8", "--yes", code=1).stderr
    assert f"batch {shop.batch} depends on it" in refusal
    assert refusal.count("\n") == 1


@pytest.mark.usefixtures("shop")
def test_undo_of_a_number_that_is_none(run: Any) -> None:
    assert "history" in run("undo", "99", "--yes", code=2).stderr
    assert "whole number" in run("undo", "latest", "--yes", code=2).stderr


def test_history_lists_what_was_written_by_her_own_clock(shop: Any, run: Any) -> None:
    spill(shop)
    run("undo", "15", "--yes")
    lines = run("history").stdout.splitlines()
    assert lines[0] == "16 entries, the latest last."
    assert lines[-1].split()[:7] == ["16", "1", "Jun", "2026", "10:30", "Nuala", "Took"]  # 09:30 UTC, Dublin in summer
    assert lines[-2].endswith("[taken back by 16]")
    assert len(run("history", "--last", "3").stdout.splitlines()) == 2 + 3 + 1  # and how to see the others


def test_history_as_json_has_utc_and_what_undoes_what(shop: Any, run: Any) -> None:
    spill(shop)
    run("undo", "15", "--yes")
    spilt, undone = json.loads(run("history", "--last", "2", "--json").stdout)
    assert (spilt["entry"], spilt["undone_by"], spilt["reverses"]) == (15, 16, None)
    assert (undone["entry"], undone["undone_by"], undone["reverses"]) == (16, None, 15)
    assert undone["recorded_at"] == "2026-06-01T09:30:00Z"


@pytest.mark.usefixtures("shop")
def test_who_writes_is_named(run: Any) -> None:
    run("--as", "Orla", "supplier", "add", "Dune Herbs")
    assert json.loads(run("history", "--last", "1", "--json").stdout)[0]["who"] == "Orla"


@pytest.mark.usefixtures("shop")
def test_backup_writes_a_checked_copy_and_does_not_overwrite_unasked(run: Any, tmp_path: Path) -> None:
    assert "copy.db holds 14 entries, checked." in run("backup", "copy.db").stdout
    assert open_rows(tmp_path / "copy.db").execute("SELECT count(*) FROM entry").fetchone()[0] == 14
    assert "--force" in run("backup", "copy.db", code=2).stderr
    run("backup", "copy.db", "--force")
    run("--ledger", "copy.db", "check")
