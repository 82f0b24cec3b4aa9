"""A ledger written by its own operations passes its check."""

import json
import shutil
import sqlite3
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import Refused
from ledger.operations.keep.check import check
from ledger.operations.stock.lots import waste_lot
from ledger.rows.opened import open_rows
from ledger.storage.book import Book
from ledger.storage.tables.stock import Movement


def test_a_new_ledger_is_clean(book: Book) -> None:
    verdict = check(open_rows(book.path))
    assert verdict.findings == ()
    assert verdict.entries == 1


def test_a_shop_with_something_in_every_table_is_clean(full: Any) -> None:
    assert check(full.rows()).findings == ()


def test_the_head_is_the_digest_of_the_last_entry(shop: Any) -> None:
    rows = shop.rows()
    last = rows.execute("SELECT id, digest FROM entry ORDER BY id DESC LIMIT 1").fetchone()
    verdict = check(rows)
    assert (verdict.entries, verdict.head) == (last["id"], last["digest"])


def test_a_breach_that_passes_the_guards_is_found_by_the_laws(shop: Any) -> None:
    """A program that writes a proper entry, but moves bars that arrive nowhere."""
    with shop.book.write("stall out") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.batch,)).fetchone()[0]
        tx.add(Movement(lot_id=lot, place_id=1, on=date(2026, 5, 9), quantity=-3, kind="moved"))
        tx.say("Took 3 bars somewhere.")
    (found,) = check(shop.rows()).findings
    assert found.entry == 15
    assert "a move leaves -3" in found.what


def test_rules_of_a_newer_program_are_not_called_damage(shop: Any) -> None:
    raw = sqlite3.connect(shop.book.path)
    raw.executescript("DROP VIEW laid_revision; CREATE VIEW laid_revision AS SELECT 1000 AS revision")
    raw.close()
    with pytest.raises(Refused, match="rules of a newer soapledger"):
        check(shop.rows())


@pytest.mark.usefixtures("shop")
def test_the_command_says_how_another_copy_stands(run: Any, tmp_path: Path) -> None:
    run("backup", "copy.db")
    said = run("check", "--against", "copy.db").stdout
    assert "copy.db and soap.db hold the same 14 entries." in said
    run("stall", "add", "Quay")
    said = run("check", "--against", "copy.db").stdout
    assert "soap.db goes on where copy.db ends: up to entry 14 both are the same, and 1\nentry more stands" in said
    said = run("--ledger", "copy.db", "check", "--against", "soap.db").stdout
    assert "soap.db goes on where copy.db ends" in said
    run("--ledger", "copy.db", "stall", "add", "Hill fair")
    refused = run("check", "--against", "copy.db", code=1).stderr
    assert "copy.db and soap.db part after entry 14: 1 entry follows in soap.db and 1 other in copy.db" in refused
    assert run("check", "--against", "nowhere.db", code=2).stderr == "There is no file nowhere.db to compare with.\n"
    (tmp_path / "notes.txt").write_text("no ledger", encoding="utf-8")
    assert "notes.txt cannot be read as a ledger" in run("check", "--against", "notes.txt", code=1).stderr
    found = json.loads(run("check", "--against", "copy.db", "--json", code=1).stdout)["against"]
    assert found == {"kinship": "they part", "shared": 14, "ours": 15, "theirs": 15}


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("CREATE TABLE diary (words TEXT)", "the table diary is not soapledger's, and is left as it is"),
        ("CREATE VIEW mine AS SELECT 1", "the view mine is not soapledger's, and is left as it is"),
        ("CREATE INDEX mine ON lot (code)", "the index mine is not soapledger's, and is left as it is"),
        ("DROP INDEX movement_stock", "the index movement_stock is not as soapledger lays it: answers may be slow"),
        ("DROP VIEW laid_revision", "its views and guards are an earlier soapledger's"),
        (
            "CREATE TABLE diary (lot_id INTEGER REFERENCES lot(id)); INSERT INTO diary VALUES (999)",
            "row 1 of diary, which is not soapledger's, points at a row of lot that is not there",
        ),
        (
            "CREATE TABLE diary (id INTEGER PRIMARY KEY, entry_id INTEGER REFERENCES entry(id), words TEXT);"
            "INSERT INTO diary VALUES (1, 5, 'smells of spring'), (2, 999, 'to come')",
            "the table diary is not soapledger's, and is left as it is",
        ),
        (
            "DROP VIEW laid_revision; DROP TRIGGER movement_within_stock; DROP VIEW live_lot;"
            "CREATE VIEW live_lot AS SELECT * FROM lot",
            "its views and guards are an earlier soapledger's",
        ),
    ],
)
def test_what_threatens_nothing_is_a_remark(shop: Any, run: Any, change: str, said: str) -> None:
    shop.book.close()
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    raw.executescript(change)
    raw.close()
    verdict = check(open_rows(shop.book.path))
    assert verdict.findings == ()
    assert any(one.startswith(said) for one in verdict.remarks)
    assert f"Beside that: {said}" in " ".join(run("check").stdout.split())
    run("backup", "copy.db")


def changed(shop: Any, change: str) -> None:
    """The shop's file changed with its guards away and back."""
    shop.book.close()
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    guards = raw.execute("SELECT * FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid").fetchall()
    raw.execute("PRAGMA writable_schema = ON")  # all at once: after each DROP TRIGGER the whole schema is read anew
    raw.execute("DELETE FROM sqlite_schema WHERE type = 'trigger'")
    raw.execute("PRAGMA writable_schema = RESET")
    raw.executescript(f"BEGIN; {change}; PRAGMA writable_schema = ON;")
    raw.executemany("INSERT INTO sqlite_schema VALUES (?, ?, ?, ?, ?)", guards)
    raw.execute("COMMIT")
    raw.close()


@pytest.mark.parametrize(("spilt", "seen"), [(49, True), (50, False)])
def test_a_quick_look_goes_fifty_entries_back_and_says_what_it_left_out(
    shop: Any, built: Any, run: Any, spilt: int, seen: bool
) -> None:
    def spill(book: Book, times: int = 50) -> None:
        for _ in range(times):
            waste_lot(book, shop.olive, 1000, place=None, on=date(2026, 6, 1), reason="spilt")

    shutil.copyfile(built("spilt 50 times", spill, shop.book.path)[0], shop.book.path)
    spill(shop.book, spilt + 1 - 50)
    said = " ".join(run("check", "--fast").stdout.split())
    assert said.startswith(f"The last 50 entries of {15 + spilt} and what is on hand were looked at; nothing is wrong.")
    assert "Not looked at: earlier entries, the pages of the file" in said
    changed(shop, "UPDATE movement SET note = 'dropped' WHERE entry_id = 15")
    told = run("check", "--fast", code=3 if seen else 0).stderr
    assert ("entry 15 (Threw away" in told) == seen
    run("check", code=3)


def test_a_quick_look_finds_what_is_below_zero(shop: Any, run: Any) -> None:
    with shop.book.write("lot waste") as tx:
        tx.rows.execute("DROP TRIGGER movement_within_stock")
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.olive,)).fetchone()[0]
        tx.add(Movement(lot_id=lot, place_id=1, on=date(2026, 5, 9), quantity=-9_000_000, kind="wasted"))
        tx.say("Spilt more than there was.")
    told = run("check", "--fast", code=3).stderr
    assert "lot L1-X: workshop held -4600000 on 2026-05-09. Expected: nothing less than 0." in told


def test_a_finding_tells_entry_table_row_what_was_expected_and_what_to_do(shop: Any, run: Any) -> None:
    changed(shop, "UPDATE movement SET quantity = quantity + 1 WHERE entry_id = 8 AND lot_id = 2")
    (found,) = json.loads(run("check", "--json", code=3).stdout)["findings"]
    assert found["what"].startswith("entry 8 (Received 4 lots")
    assert found["what"].endswith(": movement 2 of lot L2-8 was changed")
    assert (found["entry"], found["table"], found["row"]) == (8, "movement", "movement 2 of lot L2-8")
    assert found["expected"] == "as Nuala wrote it, 2026-06-01T09:30:00Z"
    told = run("check", code=3).stderr
    assert "movement 2 of lot L2-8 was changed. Expected: as Nuala wrote it" in told
    assert told.endswith("Keep this file as it is, and go back to your last backup whose check is clean.\n")
