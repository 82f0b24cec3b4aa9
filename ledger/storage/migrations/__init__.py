"""Brings a ledger file to the schema this program knows; the numbered SQL files are its only source."""

import re
import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path

from ledger.errors import StrangeSchema
from ledger.fileformat import (
    APPLICATION_ID,
    LAID_REVISION,
    SCHEMA_VERSION,
    TABLES,
    laid_revision_view,
    revision_told,
    what_counts,
)
from ledger.storage.chain import fact_tables
from ledger.units.currencies import DECIMALS
from ledger.units.words import COLUMNS, FREE_TEXT

_HERE = Path(__file__).parent


def migration_files() -> tuple[Path, ...]:
    """The migrations in order; the n-th brings a file from version n - 1 to n."""
    return tuple(sorted(_HERE.glob("[0-9]*.sql")))


def migrate(raw: sqlite3.Connection, *, to: int | None = None) -> None:
    """Run the migrations a file lacks, then lay its views, guards and indexes, all in one transaction.

    `to` stops at an older version; left out, the file comes to the one this program knows. Views, guards and
    indexes of her own are left as they are.
    """
    to = SCHEMA_VERSION if to is None else to
    raw.execute("PRAGMA legacy_alter_table = ON")  # else a view of her own stops a table from being laid anew
    raw.execute("BEGIN IMMEDIATE")
    try:
        version = raw.execute("PRAGMA user_version").fetchone()[0]  # read here: another program may have been first
        _drop_ours(raw)  # a table they read may be laid anew
        if version == 1:
            _complete_first_format(raw)
        hers = raw.execute("SELECT name, sql FROM sqlite_schema WHERE type IN ('trigger', 'index')").fetchall()
        for path in migration_files()[version:to]:
            for statement in _statements(path.read_text(encoding="utf-8")):
                raw.execute(statement)
        for name, sql in hers:  # what stood on a table that was laid anew went with it
            if sql and not raw.execute("SELECT 1 FROM sqlite_schema WHERE name = ?", (name,)).fetchone():
                raw.execute(sql)
        raw.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        raw.execute(f"PRAGMA user_version = {to}")
        _lay(raw, indexes=to == SCHEMA_VERSION)
        raw.execute("COMMIT")
    except BaseException:
        if raw.in_transaction:
            raw.execute("ROLLBACK")
        raise


def laid_revision(raw: sqlite3.Connection) -> int:
    """Which revision of the views and guards a file holds, by the text of the view that tells it; 0 before they had."""
    row = raw.execute("SELECT sql FROM main.sqlite_schema WHERE name = 'laid_revision'").fetchone()
    return revision_told(row[0] if row else None)


def refuse_strange_guards(path: Path, found: Iterable[sqlite3.Row]) -> None:
    """Raise StrangeSchema for a trigger on a table or view of ours that no revision of ours has by its name."""
    for kind, name, table, _ in found:
        on = table.removeprefix("live_")
        if kind == "trigger" and not _is_guard(name, table) and (on in TABLES or table == "laid_revision"):
            raise StrangeSchema(
                f"{path} has a trigger {name} on {table} that no soapledger laid; it is not obeyed, and nothing was "
                "changed. Take it out, or go back to your last backup."
            )


def _is_guard(name: str, table: str) -> bool:
    return name in _GUARDS or name in {f"{table}_{end}" for end in _ENDINGS}


def _drop_ours(raw: sqlite3.Connection) -> None:
    """Take out the views and guards that this program or an earlier one laid, and nothing of hers.

    Of our indexes, only those that are written otherwise today.
    """
    found = raw.execute("SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE type <> 'table'").fetchall()
    tables = set(fact_tables(raw))
    for kind, name, table, sql in sorted(tuple(row) for row in found if row[3]):  # triggers before views they read
        if kind == "trigger" and _is_guard(name, table):
            raw.execute(f"DROP TRIGGER {name}")
        elif kind == "view" and (name == "laid_revision" or name.removeprefix("live_") in tables or is_to_read(sql)):
            raw.execute(f"DROP VIEW {name}")
        elif kind == "index" and name in _INDEXES and sql != _INDEXES[name]:
            raw.execute(f"DROP INDEX {name}")


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


def _lay(raw: sqlite3.Connection, *, indexes: bool) -> None:
    tables = fact_tables(raw)
    for table in tables:
        raw.execute(f"CREATE VIEW live_{table} AS {what_counts(table)}")
        raw.execute(f"CREATE INDEX IF NOT EXISTS {table}_of_entry ON {table} (entry_id)")
    laid = {row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
    for statement in _GUARDS.values():
        if statement.partition(" ON ")[2].split()[0] in laid:  # a format without a table has no guard of it
            raw.execute(statement)
    for table in tables:
        for statement in (*_known_words(raw, table), *_append_only(table)):  # what is laid last is asked first
            raw.execute(statement)
    for table in (*tables, "entry"):
        raw.execute(_never_changed(raw, table, erases="blanked" in tables))
    there = {row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'index'")}
    for name, statement in _INDEXES.items() if indexes else ():
        if name not in there:
            raw.execute(statement)
    hers = {row[0].casefold() for row in raw.execute("SELECT name FROM sqlite_schema")}
    for name, statement in _TO_READ.items() if indexes else ():
        if name not in hers:
            raw.execute(statement)
    raw.execute(laid_revision_view(LAID_REVISION))


def is_to_read(sql: str | None) -> bool:
    """Whether a view is one of ours for a person to read, by the words it begins with; one of hers is not."""
    return bool(sql and re.match(r"CREATE VIEW \w+ AS -- laid by soapledger: ", sql))


def to_read() -> tuple[str, ...]:
    """The names of the views for a person to read."""
    return tuple(_TO_READ)


def _append_only(table: str) -> tuple[str, ...]:
    return (
        f"CREATE TRIGGER {table}_never_deleted BEFORE DELETE ON {table} "
        "BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END",
        f"CREATE TRIGGER {table}_entry_still_open BEFORE INSERT ON {table} "
        "WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) "
        "BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END",
    )


def _never_changed(raw: sqlite3.Connection, table: str, *, erases: bool) -> str:
    """The guard that lets nothing of a row be changed but a free text that an erasure, still being written, names.

    What stands there then says that something was erased.
    """
    columns = [row[1] for row in raw.execute(f"PRAGMA table_info({table})")]
    free = [one for one in columns if erases and one in _ERASED.get(table, ())]

    def of(row: str, names: list[str]) -> str:
        return "(" + ", ".join(f'{row}."{name}"' for name in names) + ")"

    kept = [one for one in columns if one not in free]
    when = [f"{of('NEW', kept)} IS NOT {of('OLD', kept)}", f"{of('NEW', free)} IS {of('OLD', free)}"] if free else []
    for one in free:
        told = "" if one == "marks" else f"ifnull(instr(NEW.\"{one}\", 'erased'), 0) = 0 OR "
        when.append(
            f'NEW."{one}" IS NOT OLD."{one}" AND ({told}NOT EXISTS ('
            f"SELECT 1 FROM blanked b WHERE b.of_table = '{table}' AND b.of_row = OLD.id AND b.of_column = '{one}' "
            "AND NOT EXISTS (SELECT 1 FROM entry WHERE id = b.entry_id)))"
        )
    return (
        f"CREATE TRIGGER {table}_never_changed BEFORE UPDATE ON {table} "
        f"BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'){' WHERE ' if when else ''}"
        f"{' OR '.join(when)}; END"
    )


def _known_words(raw: sqlite3.Connection, table: str) -> Iterator[str]:
    there = {row[1] for row in raw.execute(f"PRAGMA table_info({table})")}
    for column in sorted(column for name, column in COLUMNS if name == table and column in there):
        words = ", ".join(f"'{word}'" for word in COLUMNS[table, column])
        yield (
            f"CREATE TRIGGER {table}_{column}_known BEFORE INSERT ON {table} WHEN NEW.{column} NOT IN ({words}) "
            f"BEGIN SELECT RAISE(ABORT, 'guard: {table} knows no such {column}.'); END"
        )


def _text(name: str) -> str:
    return (_HERE.parent / name).read_text(encoding="utf-8")


def _statements(script: str) -> list[str]:
    found, so_far = [], ""
    for line in script.splitlines(keepends=True):
        so_far += line
        if sqlite3.complete_statement(so_far):
            found.append(so_far)
            so_far = ""
    return found


def _coins() -> str:
    """How many of its smallest coin a currency has, in SQL."""
    groups = {digits: sorted(code for code, one in DECIMALS.items() if one == digits) for digits in (0, 3)}
    cases = (f"WHEN currency IN ({str(codes)[1:-1]}) THEN {10**digits}" for digits, codes in groups.items())
    return f"CASE {' '.join(cases)} ELSE 100 END"


def _by_name(file: str, kind: str) -> dict[str, str]:
    """The statements of a file that lays things of one kind, each by the name of the thing."""
    text = _text(file).replace("{coins}", _coins())
    found = (one[one.index(f"CREATE {kind} ") :].strip().rstrip(";") for one in _statements(text))
    return {one.split()[2]: one for one in found}


_ERASED = {**FREE_TEXT, "entry": (*FREE_TEXT["entry"], "marks"), "entry_salt": ("salt",)}
# The guards that are written out, the indexes, and the views to read; other guards follow from the tables.
_GUARDS, _INDEXES = _by_name("guards.sql", "TRIGGER"), _by_name("indexes.sql", "INDEX")
_TO_READ = _by_name("views.sql", "VIEW")
_ENDINGS = {
    "never_changed",
    "never_deleted",
    "entry_still_open",
    *(f"{column}_known" for _, column in COLUMNS),
}
