"""What a soapledger lays is known by its digest, and nothing else that a file holds is asked or obeyed."""

import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from making import bring_up_to_date

from ledger.errors import DamagedLedger, LedgerError, Refused, StrangeSchema
from ledger.fileformat import APPLICATION_ID, GUARDS_LAID, SCHEMA, SCHEMA_VERSION, TABLES, TABLES_LAID, schema_digest
from ledger.rows.opened import open_rows
from ledger.storage import book as book_module
from ledger.storage.book import Book
from ledger.storage.migrations import migrate

DUMPS = sorted((Path(__file__).parent / "formats").glob("*.sql"))


def laid(to: int) -> sqlite3.Connection:
    """A new file of a format."""
    raw = sqlite3.connect(":memory:", isolation_level=None)
    migrate(raw, to=to)
    return raw


def test_what_is_laid_is_what_is_known() -> None:
    """A schema that was changed puts its tables and digests into fileformat.py, as this prints them."""
    known: dict[int, set[str]] = {}
    for version in range(1, SCHEMA_VERSION + 1):
        known.setdefault(version, set()).add(schema_digest(laid(version).execute(SCHEMA).fetchall())[0])
    for dump in DUMPS:
        with closing(sqlite3.connect(":memory:")) as raw:
            raw.executescript(dump.read_text(encoding="utf-8"))
            version = raw.execute("PRAGMA user_version").fetchone()[0]
            known[version].add(schema_digest(raw.execute(SCHEMA).fetchall())[0])
    new = laid(SCHEMA_VERSION).execute(SCHEMA).fetchall()
    tables = {row[1] for row in new if row[0] == "table"}
    assert tables == TABLES, f"TABLES in fileformat.py lacks {tables - TABLES} or has too many: {TABLES - tables}"
    assert {version: set(one) for version, one in TABLES_LAID.items()} == known, f"TABLES_LAID is {known}"
    assert schema_digest(new)[1] == GUARDS_LAID, f"GUARDS_LAID is {schema_digest(new)[1]}"


ENDLESS = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count(*) AS revision FROM n"
HOSTILE = {
    "an endless view in place of ours": ("DROP VIEW live_recipe", f"CREATE VIEW live_recipe AS {ENDLESS}"),
    "an endless view in place of a table": ("DROP TABLE recipe_figures", f"CREATE VIEW recipe_figures AS {ENDLESS}"),
    "a trigger that deletes": ("CREATE TRIGGER t AFTER INSERT ON supplier BEGIN DELETE FROM personal_text; END",),
    "a guard taken out": ("DROP TRIGGER movement_never_deleted",),
    "a guard in other words": (
        "DROP TRIGGER lot_never_deleted",
        "CREATE TRIGGER lot_never_deleted BEFORE DELETE ON lot BEGIN SELECT 1; END",
    ),
}


def changed(path: Path, *statements: str) -> bytes:
    """The ledger as someone else changed it."""
    raw = sqlite3.connect(path, isolation_level=None)
    raw.execute("PRAGMA legacy_alter_table = ON")
    for statement in statements:
        raw.execute(statement)
    raw.close()
    return path.read_bytes()


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize("which", HOSTILE)
def test_nothing_that_is_not_ours_is_asked_or_obeyed(shop: Any, run: Any, which: str) -> None:
    before = changed(shop.book.path, *HOSTILE[which])
    for words in (["stock"], ["supplier", "add", "Ottersby"], ["history"], ["check"]):
        run(*words, code=3)
    with pytest.raises(StrangeSchema):
        Book(shop.book.path, who="Nuala", now=shop.book._now)
    assert shop.book.path.read_bytes() == before


@pytest.mark.usefixtures("frozen")
def test_an_endless_view_of_the_revision_is_never_asked(shop: Any, run: Any) -> None:
    """It is read as text; the file is then like one of an earlier revision, and our own is laid before a write."""
    changed(shop.book.path, "DROP VIEW laid_revision", f"CREATE VIEW laid_revision AS {ENDLESS}")
    assert "olive oil" in run("stock").stdout
    run("supplier", "add", "Ottersby")
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_a_trigger_in_a_file_of_another_revision_is_refused_before_anything_is_laid(shop: Any, run: Any) -> None:
    sly = "CREATE TRIGGER sly AFTER INSERT ON supplier BEGIN DELETE FROM personal_text; END"
    before = changed(shop.book.path, "DROP VIEW laid_revision", sly)
    assert "a trigger sly on supplier" in run("supplier", "add", "Ottersby", code=3).stderr
    assert shop.book.path.read_bytes() == before


@pytest.mark.usefixtures("frozen")
def test_tables_views_and_indexes_of_hers_are_no_hindrance(shop: Any, run: Any) -> None:
    changed(
        shop.book.path,
        "CREATE TABLE my_notes (id INTEGER PRIMARY KEY, text)",
        "CREATE VIEW live_prices AS SELECT * FROM my_notes",
        "CREATE INDEX my_index ON lot (best_before)",
        "CREATE TRIGGER my_trigger AFTER INSERT ON my_notes BEGIN SELECT 1; END",
    )
    run("supplier", "add", "Ottersby")
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.parametrize("number", [-2147483648, -1, 0, 10_000, 2147483647])
def test_a_format_that_no_program_writes_is_damage(shop: Any, run: Any, number: int) -> None:
    before = changed(shop.book.path, f"PRAGMA user_version = {number}")
    for words in (["stock"], ["check"], ["supplier", "add", "X"]):
        done = run(*words, code=3)
        assert done.stderr.count("\n") == 1
        assert f"format is {number}," in done.stderr
    with pytest.raises(DamagedLedger):
        bring_up_to_date(shop.book.path)
    assert shop.book.path.read_bytes() == before
    assert [one.name for one in shop.book.path.parent.iterdir()] == ["soap.db"]


@pytest.mark.parametrize("number", [SCHEMA_VERSION + 1, 9999])
def test_the_next_formats_are_a_newer_programs(shop: Any, number: int) -> None:
    changed(shop.book.path, f"PRAGMA user_version = {number}")
    with pytest.raises(Refused, match="newer"):
        open_rows(shop.book.path)


def old_ledger(folder: Path, dump: Path) -> Path:
    path = folder / "soap.db"
    with closing(sqlite3.connect(path)) as raw:
        raw.executescript(dump.read_text(encoding="utf-8"))
    return path


def dumped(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as raw:
        assert raw.execute("PRAGMA application_id").fetchone()[0] == APPLICATION_ID
        return [str(raw.execute("PRAGMA user_version").fetchone()[0]), *raw.iterdump()]


@pytest.mark.parametrize("stage", ["migrate", "ledger.storage.upgrade.fill_in"])
def test_an_upgrade_that_fails_leaves_no_copy_and_the_ledger_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, stage: str
) -> None:
    path = old_ledger(tmp_path, DUMPS[1])
    before = dumped(path)

    def fails(*_: Any) -> None:
        raise LedgerError("no")

    if stage == "migrate":
        monkeypatch.setattr(book_module, "migrate", fails)
    else:
        monkeypatch.setattr(stage, fails)
    with pytest.raises(LedgerError, match="no"):
        Book(path, who="Nuala", now=lambda: None)  # type: ignore[arg-type, return-value]
    assert dumped(path) == before
    assert [one.name for one in tmp_path.iterdir()] == ["soap.db"]


def test_an_entry_that_another_program_wrote_during_an_upgrade_is_not_taken_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = old_ledger(tmp_path, DUMPS[1])

    def fails(_: Any) -> None:
        with closing(sqlite3.connect(tmp_path / "soap-format-1.db")) as raw:  # as if the ledger were an entry ahead
            raw.executescript(
                "DROP TRIGGER entry_never_deleted; DELETE FROM entry WHERE id = (SELECT max(id) FROM entry)"
            )
        raise LedgerError("no")

    monkeypatch.setattr("ledger.storage.upgrade.fill_in", fails)
    with pytest.raises(LedgerError, match="no"):
        Book(path, who="Nuala", now=lambda: None)  # type: ignore[arg-type, return-value]
    assert dumped(path)[0] == str(SCHEMA_VERSION)
    assert (tmp_path / "soap-format-1.db").exists()


def test_a_trigger_in_an_old_ledger_is_refused_before_the_upgrade(tmp_path: Path) -> None:
    path = old_ledger(tmp_path, DUMPS[4])
    before = changed(path, "CREATE TRIGGER sly AFTER DELETE ON lot BEGIN DELETE FROM personal_text; END")
    with pytest.raises(StrangeSchema, match="sly on lot"):
        bring_up_to_date(path)
    assert path.read_bytes() == before
    assert [one.name for one in tmp_path.iterdir()] == ["soap.db"]
