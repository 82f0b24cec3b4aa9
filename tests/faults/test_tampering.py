"""Whatever is changed behind the ledger's back, `check` names the entry it belongs to."""

import sqlite3
from collections import defaultdict
from collections.abc import Iterator
from contextlib import closing
from itertools import zip_longest
from pathlib import Path
from typing import Any

import pytest
from shop import NOW

from ledger.domain.keep.finding import Finding
from ledger.errors import StrangeSchema
from ledger.operations.keep.check import Verdict, check
from ledger.rows.opened import OlderLedger, open_rows
from ledger.storage.book import Book
from ledger.storage.chain import fact_tables
from ledger.storage.verify import verify


def unguarded(path: Path) -> sqlite3.Connection:
    """The file with every guard out of the way, as someone who means to change it would open it."""
    raw = sqlite3.connect(path, isolation_level=None)
    raw.row_factory = sqlite3.Row
    raw.execute("PRAGMA foreign_keys = OFF")
    raw.execute("PRAGMA ignore_check_constraints = ON")
    raw.execute("PRAGMA writable_schema = ON")  # all at once: after each DROP TRIGGER the whole schema is read anew
    raw.execute("DELETE FROM sqlite_schema WHERE type = 'trigger'")
    raw.execute("PRAGMA writable_schema = RESET")
    raw.execute("BEGIN")
    return raw


def finish(raw: sqlite3.Connection, path: Path, guards: list[tuple[Any, ...]]) -> Verdict:
    """Put the guards back, so that nothing but the change itself is there to be found."""
    raw.execute("PRAGMA writable_schema = ON")
    raw.executemany("INSERT INTO sqlite_schema VALUES (?, ?, ?, ?, ?)", guards)
    raw.execute("COMMIT")
    raw.close()
    try:
        rows = open_rows(path)
    except OlderLedger:  # it looks as if an earlier program wrote it, and is brought up to date as a command does it
        Book(path, who="Nuala", now=lambda: NOW).close()
        rows = open_rows(path)
    verdict = check(rows)
    rows.close()
    return verdict


def guards_of(path: Path) -> list[tuple[Any, ...]]:
    """The rows of the guards as the file itself holds them."""
    raw = sqlite3.connect(path)
    found = raw.execute("SELECT * FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid").fetchall()
    raw.close()
    return found


def other(value: Any) -> Any:
    """The value with one byte (or its last bit) changed."""
    if isinstance(value, int):
        return value ^ 1
    if isinstance(value, bytes):
        return bytes([value[0] ^ 1]) + value[1:]
    text = str(value)
    return ("y" if text[:1] == "x" else "x") + text[1:]


def owner(raw: sqlite3.Connection, table: str, row: sqlite3.Row) -> int:
    """The entry that a row belongs to."""
    if table == "entry":
        return int(row["id"])
    if table == "personal_text":
        query, key = "SELECT entry_id FROM personal WHERE id = ?", row["personal_id"]
    elif table == "attached_content":
        query, key = "SELECT entry_id FROM attachment WHERE digest = ?", row["digest"]
    else:
        return int(row["entry_id"])
    return int(raw.execute(query, (key,)).fetchone()[0])


def changes(raw: sqlite3.Connection) -> Iterator[tuple[str, str, Any, Any, int]]:
    """One change for every value of every row of every table: (table, column, rowid, new value, entry)."""
    tables = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    for table in tables:
        keys = {row[1] for row in raw.execute(f"PRAGMA table_info({table})") if row[5]}
        for row in raw.execute(f"SELECT rowid AS _rowid, * FROM {table}").fetchall():
            for column in row.keys():  # noqa: SIM118
                if column != "_rowid" and column not in keys and row[column] is not None:
                    yield table, column, row["_rowid"], other(row[column]), owner(raw, table, row)


def test_any_value_of_any_row_changed_is_named_by_its_entry_its_table_and_its_row(full: Any) -> None:
    """On one copy in memory, one value of every row at a time; that its guards are gone is found each time."""
    full.book.close()
    raw = sqlite3.connect(":memory:", isolation_level=None)
    raw.row_factory = sqlite3.Row
    with closing(sqlite3.connect(full.book.path)) as file:
        file.backup(raw)
    raw.executescript("PRAGMA ignore_check_constraints = ON; PRAGMA writable_schema = ON;")
    raw.execute("DELETE FROM sqlite_schema WHERE type = 'trigger'")
    raw.execute("PRAGMA writable_schema = RESET")
    unguarded_file = set(verify(raw))
    wanted = list(changes(raw))
    tables = {row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
    assert {change[0] for change in wanted} == tables
    by_row: dict[Any, list[tuple[str, str, Any, Any, int]]] = defaultdict(list)
    by_entry: dict[Any, list[tuple[str, str, Any, Any, int]]] = defaultdict(list)
    for one in wanted:
        table, column, rowid, _, entry = one
        if column == "entry_id" or table in (
            "entry",
            "personal_text",
            "attached_content",
        ):  # told by rows that are sound
            by_entry[entry].append(one)
        else:
            by_row[table, rowid].append(one)
    raw.execute("BEGIN")
    for together in (*zip_longest(*by_row.values()), *zip_longest(*by_entry.values())):  # all of them are told
        raw.execute("SAVEPOINT untouched")
        done = [one for one in together if one]
        for table, column, rowid, value, _ in done:
            raw.execute(f'UPDATE {table} SET "{column}" = ? WHERE rowid = ?', (value, rowid))
        found = [one for one in verify(raw) if one not in unguarded_file]
        raw.execute("ROLLBACK TO untouched")
        for table, column, rowid, _, entry in done:
            of_it = [one for one in found if (one.entry, one.table) == (entry, table)]
            assert any(row_told(one, table, rowid) for one in of_it), f"{table}.{column}, row {rowid}: {of_it or found}"


def row_told(finding: Finding, table: str, rowid: Any) -> bool:
    """Whether a finding names the row: by its number, by the code it has, by whose it is, or as a paper."""
    row = finding.row or ""
    if table in ("personal_text", "attached_content"):
        return row.startswith(("customer ", "supplier ", "complaint ")) or row == "coa-4471.txt"
    return row.startswith(f"{table.replace('_', ' ')} ") and (str(rowid) in row.split() or " of " not in row)


def test_a_byte_changed_in_the_file_itself_is_found(full: Any) -> None:
    path = full.book.path
    full.book.close()
    whole = path.read_bytes()
    place = whole.index(b"Tarnlow Oils")
    path.write_bytes(whole[:place] + b"X" + whole[place + 1 :])
    verdict = check(open_rows(path))
    assert verdict.findings  # it may be the supplier's name itself, or what an entry said of it
    assert {one.entry for one in verdict.findings} <= {2, 8}


def test_a_smuggled_row_is_found_with_the_entry_it_claims(full: Any) -> None:
    path = full.book.path
    full.book.close()
    guards = guards_of(path)
    raw = unguarded(path)
    raw.execute(
        'INSERT INTO movement (entry_id, lot_id, place_id, "on", quantity, kind) '
        "VALUES (8, 1, 1, '2026-03-02', 1000, 'received')"
    )
    assert 8 in {one.entry for one in finish(raw, path, guards).findings}


def test_a_row_of_an_entry_that_was_never_written_is_found(full: Any) -> None:
    path = full.book.path
    full.book.close()
    guards = guards_of(path)
    raw = unguarded(path)
    raw.execute("INSERT INTO place (entry_id, code, name, kind) VALUES (999, 'x', 'x', 'stall')")
    assert any("999" in one.what for one in finish(raw, path, guards).findings)


def test_a_deleted_row_and_a_deleted_entry_are_found(full: Any) -> None:
    path = full.book.path
    full.book.close()
    guards, whole = guards_of(path), path.read_bytes()
    raw = unguarded(path)
    raw.execute("DELETE FROM reading WHERE what = 'poured'")
    assert 11 in {one.entry for one in finish(raw, path, guards).findings}
    path.write_bytes(whole)
    raw = unguarded(path)
    raw.execute("DELETE FROM reading WHERE entry_id = 11")
    raw.execute("DELETE FROM entry WHERE id = 11")
    words = [one.what for one in finish(raw, path, guards).findings]
    assert "entry 11 is missing" in words
    assert any("entry 12 does not follow" in one for one in words)


def test_a_last_entry_cut_off_is_not_found_by_the_chain_but_by_the_seal(full: Any) -> None:
    """Only a digest written down elsewhere shows that the newest entries were taken off whole."""
    path = full.book.path
    seal = check(open_rows(path)).head
    full.book.close()
    guards = guards_of(path)
    raw = unguarded(path)
    last = raw.execute("SELECT max(id) FROM entry").fetchone()[0]
    for table in fact_tables(raw):
        raw.execute(f"DELETE FROM {table} WHERE entry_id = {last}")
    raw.execute(f"DELETE FROM entry WHERE id = {last}")
    verdict = finish(raw, path, guards)
    assert verdict.findings == ()
    assert verdict.head != seal


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ("DROP TRIGGER movement_within_stock", "trigger movement_within_stock is missing"),
        ("ALTER TABLE lot ADD COLUMN extra TEXT", "table lot was changed"),
        ("CREATE TRIGGER sly AFTER INSERT ON lot BEGIN SELECT 1; END", "trigger sly is not ours"),
        ("CREATE TRIGGER sly INSTEAD OF INSERT ON live_lot BEGIN SELECT 1; END", "trigger sly is not ours"),
        ("DROP VIEW live_lot", "view live_lot is missing"),
    ],
)
def test_a_changed_schema_is_found(full: Any, change: str, words: str) -> None:
    full.book.close()
    raw = sqlite3.connect(full.book.path, isolation_level=None)
    raw.execute(change)
    raw.close()
    rows = open_rows(full.book.path, any_schema=True)
    assert words in {one.what.removeprefix("the ") for one in check(rows).findings}
    if "INDEX" not in change:
        with pytest.raises(StrangeSchema):
            open_rows(full.book.path)


def test_unreadable_values_are_found_and_named(full: Any) -> None:
    path = full.book.path
    full.book.close()
    guards, whole = guards_of(path), path.read_bytes()
    for value in (b"\x00\xff", 1.5, "CAST(x'fffe' AS TEXT)"):
        path.write_bytes(whole)
        raw = unguarded(path)
        if isinstance(value, str):
            raw.execute(f"UPDATE supplier_revision SET note = {value}")
        else:
            raw.execute("UPDATE supplier_revision SET note = ?", (value,))
        assert 2 in {one.entry for one in finish(raw, path, guards).findings}


def test_details_put_back_after_an_erasure_are_found(full: Any) -> None:
    path = full.book.path
    full.book.close()
    guards = guards_of(path)
    raw = unguarded(path)
    person = raw.execute("SELECT personal_id FROM erasure").fetchone()[0]
    raw.execute("INSERT INTO personal_text (personal_id, salt, name) VALUES (?, 'x', 'Tomas Reed')", (person,))
    assert any("are there again" in one.what for one in finish(raw, path, guards).findings)


def test_details_that_vanished_without_an_erasure_are_found(full: Any) -> None:
    path = full.book.path
    full.book.close()
    guards = guards_of(path)
    raw = unguarded(path)
    raw.execute("DELETE FROM personal_text")
    assert any("nobody decided so" in one.what for one in finish(raw, path, guards).findings)


@pytest.mark.usefixtures("frozen")
def test_the_command_names_the_entry_and_ends_with_three(full: Any, run: Any) -> None:
    path = full.book.path
    full.book.close()
    guards = guards_of(path)
    raw = unguarded(path)
    raw.execute("UPDATE movement SET quantity = quantity + 1 WHERE entry_id = 8 AND lot_id = 1")
    finish(raw, path, guards)
    assert "entry 8 (Received 4 lots from Tarnlow Oils" in run("check", code=3).stderr
