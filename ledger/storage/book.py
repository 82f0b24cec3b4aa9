"""The open book: every operation is one transaction that closes with one entry."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from datetime import datetime
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, create_engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import StaticPool
from sqlmodel import Session

from ledger.errors import BadInput, Refused
from ledger.fileformat import (
    CAREFUL,
    LACKS_ROWS,
    LAID_REVISION,
    SCHEMA,
    SCHEMA_VERSION,
    TRIGGER_DEPTH,
    known_file,
    known_schema,
    revision_told,
    trouble,
)
from ledger.storage.backup import back_up
from ledger.storage.migrations import migrate, refuse_strange_guards
from ledger.storage.output import written_beside
from ledger.storage.transaction import Transaction

PATIENCE = 10.0  # seconds to wait while another program writes


class Book:
    """A ledger file opened for writing by one person."""

    def __init__(
        self,
        path: Path,
        *,
        who: str,
        now: Callable[[], datetime],
        let_go: Callable[[], None] = lambda: None,
        just_laid: bool = False,
    ) -> None:
        """Open a ledger that exists; an older one is brought up to date after a backup copy beside it.

        `now` gives the moment of an entry; `let_go` ends what the same program still reads from the file, which
        would keep the entry out. One `just_laid` by this program is not looked at before it is used. Raises BadInput
        when there is no such file, Refused when a newer program wrote it.
        """
        if not path.exists():
            raise BadInput(f"There is no ledger at {path}; start one with: soapledger init")
        self.path = path
        self.who = who
        self._now = now
        self.handed_over: list[tuple[int, str]] = []  # (entry, digest), given to the file; whether they stand, it tells
        self._let_go = let_go
        self._opened: sqlite3.Connection | None = None
        self._engine = _engine(lambda: self._raw)
        self.old_copy: Path | None = None
        if just_laid:
            return
        try:
            self.old_copy = bring_up_to_date(path, self._raw)  # of the file as an earlier program left it
            lacking = self._raw.execute(LACKS_ROWS).fetchone()
        except BaseException:
            self.close()
            raise
        if lacking:
            from ledger.storage.upgrade import fill_in

            try:
                with self.write("upgrade") as tx:
                    fill_in(tx)
            except BaseException:
                self.close()
                if self.old_copy:
                    _put_back(path, self.old_copy)
                raise

    @property
    def _raw(self) -> sqlite3.Connection:
        """The one connection of this book, since each reads the whole schema again."""
        if self._opened is None:
            self._opened = connect(self.path)
        return self._opened

    @classmethod
    def create(cls, path: Path, *, who: str, now: Callable[[], datetime]) -> "Book":
        """Start a new, empty ledger. Raises Refused when the file exists, BadInput when its folder does not."""
        if path.exists():
            raise Refused(f"There is a ledger at {path} already; nothing is overwritten.")
        if not path.absolute().parent.is_dir():
            raise BadInput(f"There is no folder {path.parent}; make it first, or name another with --ledger FILE.")
        with written_beside(path, force=False) as beside:
            raw = sqlite3.connect(beside, isolation_level=None)
            try:
                migrate(raw)
            finally:
                raw.close()
        return cls(path, who=who, now=now, just_laid=True)

    @contextmanager
    def write(self, verb: str, *, reverses: int | None = None) -> Iterator[Transaction]:
        """One operation: committed as one entry when the block ends well, else nothing is written.

        Raises Refused when a guard of the file says no, when another program is writing, or when the disk
        is full; DamagedLedger when the file cannot be read.
        """
        self._let_go()  # a reader that waits to write, and a writer that waits for it, would wait for each other
        try:
            with Session(self._engine, expire_on_commit=False) as session, session.begin():
                tx = Transaction(session, who=self.who, verb=verb, reverses=reverses)
                yield tx
                digest = tx.close(who=self.who, now=self._now())
                self.handed_over.append((tx.entry, digest))
                self._let_go()
        except (DBAPIError, sqlite3.Error) as error:
            meaning = trouble(error)
            if meaning is None:
                raise
            raise meaning from error

    @contextmanager
    def look(self) -> Iterator[sqlite3.Connection]:
        """The connection for view functions between two operations: it cannot write, and reads one state.

        Nothing can be written before the block ends; a look inside another one sees what that one does.
        """
        if self._raw.in_transaction:
            yield self._raw
            return
        self._raw.execute("PRAGMA query_only = ON")
        self._raw.execute("BEGIN")
        try:
            yield self._raw
        finally:
            if self._raw.in_transaction:  # a fault of the disk ends it by itself
                self._raw.execute("ROLLBACK")
            self._raw.execute("PRAGMA query_only = OFF")

    def sweep(self) -> None:
        """Write the file anew, so that nothing that was erased is left between its rows.

        What SQLite overwrites is the row; copies of it may stand where the page was once laid out differently.
        Raises Refused when the file is in use, or the disk has no room for it twice.
        """
        self._let_go()
        raw = connect(self.path)
        try:
            raw.execute("VACUUM")
        except sqlite3.Error as error:
            raise Refused(
                f"What was erased may still leave traces in the free space of {self.path}, which could not be cleared "
                f"({error}). Do the same again when nothing else uses the ledger and the disk has room."
            ) from error
        finally:
            raw.close()

    def close(self) -> None:
        """Let go of the file, until something is read or written again."""
        self._engine.dispose()
        if self._opened is not None:
            self._opened.close()  # the engine closes it only where it has written
            self._opened = None


def bring_up_to_date(path: Path, raw: sqlite3.Connection) -> Path | None:
    """Migrate an older file after a backup copy; returns the copy, or None when nothing was to do.

    Raises Refused for a file that a newer program wrote, DamagedLedger for one that is no ledger.
    """
    try:
        version = raw.execute("PRAGMA user_version").fetchone()[0]
        known_file(path, raw.execute("PRAGMA application_id").fetchone()[0], version)
        found = raw.execute(SCHEMA).fetchall()
        known_schema(path, version, found)
        laid = revision_told({row["name"]: row["sql"] for row in found}.get("laid_revision"))
        if version == SCHEMA_VERSION and laid > LAID_REVISION:
            raise Refused(
                f"{path} has the rules of a newer soapledger (their revision {laid}, this one knows {LAID_REVISION}); "
                "install the newer one to write in it. Nothing was changed."
            )
        if version == SCHEMA_VERSION and laid == LAID_REVISION:
            return None
        refuse_strange_guards(path, found)  # those of ours are taken out before a row is written
        copy = None
        if version < SCHEMA_VERSION:
            copy = _free_name(path.with_name(f"{path.stem}-format-{version}{path.suffix}"))
            back_up(path, copy, overwrite=False)
        try:
            migrate(raw)
        except BaseException:
            if copy:
                copy.unlink(missing_ok=True)
            raise
        return copy
    except sqlite3.Error as error:
        raise trouble(error) or error from error


def _put_back(path: Path, copy: Path) -> None:
    """Make a ledger what it was before it was brought up to date, from the copy made then, which goes.

    Where another program wrote meanwhile, or holds the file, both stay as they are.
    """
    last = "SELECT max(id) FROM entry"
    with suppress(sqlite3.Error):
        with closing(connect(copy)) as old, closing(connect(path)) as new:
            if old.execute(last).fetchone()[0] != new.execute(last).fetchone()[0]:
                return
            old.backup(new)
        copy.unlink()


def connect(path: Path) -> sqlite3.Connection:
    """A connection with SQLite's own defences up, for a file of whatever origin."""
    raw = sqlite3.connect(f"{path.absolute().as_uri()}?mode=rw", uri=True, timeout=PATIENCE, isolation_level=None)
    raw.row_factory = sqlite3.Row
    raw.executescript(CAREFUL)
    raw.setlimit(*TRIGGER_DEPTH)
    return raw


def _free_name(path: Path) -> Path:
    """The path itself, or the first numbered one that no file has."""
    number, free = 1, path
    while free.exists():
        number += 1
        free = path.with_name(f"{path.stem}-{number}{path.suffix}")
    return free


def _engine(opened: Callable[[], sqlite3.Connection]) -> Engine:
    def prepared() -> sqlite3.Connection:
        raw = opened()
        raw.executescript(
            "PRAGMA journal_mode = DELETE; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; "
            "PRAGMA recursive_triggers = ON; "  # else INSERT OR REPLACE slips past append-only
            "PRAGMA secure_delete = ON;"  # else erased details stay readable in the file's free space
        )
        return raw

    engine = create_engine("sqlite://", creator=prepared, poolclass=StaticPool)

    @event.listens_for(engine, "begin")
    def begin(connection: Any) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE")
        connection.exec_driver_sql("PRAGMA defer_foreign_keys = ON")

    return engine
