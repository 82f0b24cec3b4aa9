"""Brings a ledger file to the schema this program knows; the numbered SQL files are its only source."""

import sqlite3
from pathlib import Path

from ledger.fileformat import APPLICATION_ID, SCHEMA_VERSION, what_counts
from ledger.storage.chain import fact_tables

_HERE = Path(__file__).parent


def migration_files() -> tuple[Path, ...]:
    """The migrations in order; the n-th brings a file from version n - 1 to n."""
    return tuple(sorted(_HERE.glob("[0-9]*.sql")))


def migrate(raw: sqlite3.Connection, *, to: int | None = None) -> None:
    """Run the migrations a file lacks, then lay the views and guards anew, all in one transaction.

    `to` stops at an older version; left out, the file comes to the one this program knows.
    """
    to = SCHEMA_VERSION if to is None else to
    raw.execute("PRAGMA legacy_alter_table = ON")  # else a view of hers forbids laying the table it reads anew
    raw.execute("BEGIN IMMEDIATE")
    try:
        version = raw.execute("PRAGMA user_version").fetchone()[0]  # read here: another program may have been first
        _drop_views_and_guards(raw)  # a table they read may be laid anew
        if version == 1:
            _complete_first_format(raw)
        for path in migration_files()[version:to]:
            for statement in _statements(path.read_text(encoding="utf-8")):
                raw.execute(statement)
        raw.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        raw.execute(f"PRAGMA user_version = {to}")
        _lay_views_and_guards(raw)
        raw.execute("COMMIT")
    except BaseException:
        if raw.in_transaction:
            raw.execute("ROLLBACK")
        raise


def _drop_views_and_guards(raw: sqlite3.Connection) -> None:
    """Drop ours, by their names and their words; what she laid into the file herself stays."""
    old = raw.execute(
        "SELECT type, name FROM sqlite_schema "
        "WHERE type = 'view' AND name LIKE 'live\\_%' ESCAPE '\\' OR type = 'trigger' AND sql LIKE '%''guard: %'"
    ).fetchall()
    for kind, name in sorted(old):  # triggers before the views they read
        raw.execute(f"DROP {kind} {name}")


def _complete_first_format(raw: sqlite3.Connection) -> None:
    """Give a file of the first format what was added before the second: left-out lines, and codes used again."""
    if "plan_line_id" in {row[1] for row in raw.execute("PRAGMA table_info(reading)")}:
        return
    raw.execute("ALTER TABLE reading ADD COLUMN plan_line_id INTEGER REFERENCES plan_line(id)")
    raw.execute("ALTER TABLE lot RENAME TO lot_before")  # its code had to be the only one of its kind
    first = _statements(migration_files()[0].read_text(encoding="utf-8"))
    raw.execute(next(text for text in first if "CREATE TABLE lot (" in text))
    raw.execute("INSERT INTO lot SELECT * FROM lot_before")
    raw.execute("DROP TABLE lot_before")
    raw.execute(next(text for text in first if "CREATE INDEX lot_code" in text))


def _lay_views_and_guards(raw: sqlite3.Connection) -> None:
    tables = fact_tables(raw)
    for table in tables:
        raw.execute(f"CREATE VIEW live_{table} AS {what_counts(table)}")
        raw.execute(f"CREATE INDEX IF NOT EXISTS {table}_of_entry ON {table} (entry_id)")
    for statement in _statements((_HERE.parent / "guards.sql").read_text(encoding="utf-8")):
        raw.execute(statement)
    for table in tables:
        for statement in _append_only(table):
            raw.execute(statement)


def _append_only(table: str) -> tuple[str, ...]:
    refuse = "SELECT RAISE(ABORT, 'guard: What was written is never {}.');"
    return (
        f"CREATE TRIGGER {table}_never_changed BEFORE UPDATE ON {table} BEGIN {refuse.format('changed')} END",
        f"CREATE TRIGGER {table}_never_deleted BEFORE DELETE ON {table} BEGIN {refuse.format('deleted')} END",
        f"CREATE TRIGGER {table}_entry_still_open BEFORE INSERT ON {table} "
        "WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) "
        "BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END",
    )


def _statements(script: str) -> list[str]:
    found, so_far = [], ""
    for line in script.splitlines(keepends=True):
        so_far += line
        if sqlite3.complete_statement(so_far):
            found.append(so_far)
            so_far = ""
    return found
