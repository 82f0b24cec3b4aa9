"""Opens a ledger for reading: a connection that cannot write."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from datetime import date
from pathlib import Path

from ledger.errors import BadInput, DamagedLedger
from ledger.fileformat import (
    CAREFUL,
    LACKS_ROWS,
    LAID_REVISION,
    SCHEMA,
    SCHEMA_VERSION,
    TRIGGER_DEPTH,
    is_ledger,
    known_file,
    known_schema,
    laid_revision_view,
    trouble,
    what_counts,
)

Rows = sqlite3.Connection  # what a view reads from; other layers name it by this, and never import sqlite3
Row = sqlite3.Row


class OlderLedger(Exception):
    """The file was written by an older program and has to be brought up to date first."""


def open_rows(path: Path, *, any_schema: bool = False) -> sqlite3.Connection:
    """A read-only connection to a ledger; nothing in the file is asked before its schema was held to what we lay.

    `any_schema` is for a check, which says what is strange in it. Raises BadInput when there is none, DamagedLedger
    when the file is not a sound ledger (StrangeSchema when its schema is not ours), Refused when a newer program wrote
    it, OlderLedger when it has to be brought up to date first.
    """
    if not path.exists():
        raise BadInput(
            f"There is no ledger at {path}; start one with 'soapledger init', or name it: soapledger --ledger FILE …"
        )
    if not path.is_file():
        raise DamagedLedger(f"{path} is no file but a folder, a pipe or a device; name the ledger with --ledger FILE.")
    rows = sqlite3.connect(f"{path.absolute().as_uri()}?mode=rw", uri=True, timeout=10, isolation_level=None)
    rows.row_factory = sqlite3.Row
    try:
        rows.executescript(CAREFUL)
        rows.setlimit(*TRIGGER_DEPTH)
        application = rows.execute("PRAGMA application_id").fetchone()[0]
        version = rows.execute("PRAGMA user_version").fetchone()[0]
        known_file(path, application, version)
        if not any_schema:
            known_schema(path, version, rows.execute(SCHEMA).fetchall())
            if version < SCHEMA_VERSION or rows.execute(LACKS_ROWS).fetchone():
                raise OlderLedger
    except sqlite3.DatabaseError as error:
        rows.close()
        raise trouble(error) or DamagedLedger(
            f"{path} cannot be read as a ledger ({error}). Keep it, and go back to your last backup."
        ) from error
    except BaseException:
        rows.close()
        raise
    _shadow_other_views(rows)
    rows.execute("PRAGMA query_only = ON")
    return rows


def back_from_wal(path: Path) -> bool:
    """Set a ledger that another program put into WAL mode back to the mode it is written in; whether it was.

    By the file's own head (https://sqlite.org/fileformat2.html, 1.3: 2 at offset 18). It stays where that other
    program still has it open.
    """
    try:
        if not is_ledger(path) or _head(path)[18] != 2:
            return False
        with closing(sqlite3.connect(f"{path.absolute().as_uri()}?mode=rw", uri=True, timeout=0.2)) as raw:
            return bool(raw.execute("PRAGMA journal_mode = DELETE").fetchone()[0] == "delete")
    except (OSError, sqlite3.Error):
        return False


def _head(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(20)


def _shadow_other_views(rows: sqlite3.Connection) -> None:
    """Let what counts be this program's to say, where the views in the file are another's."""
    laid = rows.execute("SELECT sql FROM sqlite_schema WHERE name = 'laid_revision'").fetchone()
    if laid is None or laid["sql"] != laid_revision_view(LAID_REVISION):
        for table in _fact_tables(rows):
            rows.execute(f"CREATE TEMP VIEW live_{table} AS {what_counts(table, schema='main')}")


def _fact_tables(rows: sqlite3.Connection) -> tuple[str, ...]:
    found = rows.execute(
        "SELECT s.name FROM main.sqlite_schema s, pragma_foreign_key_list(s.name) k "
        "WHERE s.type = 'table' AND k.\"from\" = 'entry_id' AND k.\"table\" = 'entry'"
    )
    return tuple(row[0] for row in found)


def hold_still(rows: sqlite3.Connection) -> None:
    """From now on read one state of the ledger, whatever another program writes, until `let_go`.

    A writer can put in its entry only once the reader has let go.
    """
    if not rows.in_transaction:
        rows.execute("BEGIN")
        rows.execute("PRAGMA user_version").fetchone()  # BEGIN alone takes hold of nothing before the first read


def let_go(rows: sqlite3.Connection) -> None:
    """End what `hold_still` began, so that others may write; what is read next may be of a later state."""
    if rows.in_transaction:
        with suppress(sqlite3.DatabaseError):  # where the schema cannot be read, nothing can be said to SQLite
            rows.execute("COMMIT")


@contextmanager
def one_state(rows: sqlite3.Connection) -> Iterator[None]:
    """Everything read inside is of one state of the ledger; a reader that holds still already goes on so."""
    held = rows.in_transaction
    hold_still(rows)
    try:
        yield
    finally:
        if not held:
            let_go(rows)


def as_known(rows: sqlite3.Connection, horizon: int) -> None:
    """Make the connection see what was known at one entry, by views that stand before the tables of the file.

    A name is looked up in the temp schema first, so every query of every view reads what had been written by then,
    and an undo that came later takes nothing back. Personal details erased since stay erased. Raises BadInput for an
    entry that is not there.
    """
    if not rows.execute("SELECT 1 FROM entry WHERE id = ?", (horizon,)).fetchone():
        raise BadInput(f"There is no entry {horizon}; see: soapledger history")
    tables = _fact_tables(rows)
    rows.execute("PRAGMA query_only = OFF")
    rows.execute(f"CREATE TEMP VIEW entry AS SELECT * FROM main.entry WHERE id <= {horizon}")
    for table in tables:
        rows.execute(f"CREATE TEMP VIEW {table} AS SELECT * FROM main.{table} WHERE entry_id <= {horizon}")
        rows.execute(f"DROP VIEW IF EXISTS temp.live_{table}")
        rows.execute(f"CREATE TEMP VIEW live_{table} AS {what_counts(table, until=horizon)}")
    rows.execute("PRAGMA query_only = ON")


def day(text: str) -> date:
    """A stored business date."""
    return date.fromisoformat(text)


def maybe_day(text: str | None) -> date | None:
    """A stored business date that may be missing."""
    return date.fromisoformat(text) if text else None
