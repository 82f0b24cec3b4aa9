"""One operation being written."""

import secrets
import sqlite3
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict
from datetime import UTC, date, datetime
from itertools import groupby
from typing import TypeVar

from sqlmodel import Session, SQLModel

from ledger import __version__
from ledger.storage.chain import GENESIS, Head, entry_digest, rows_of
from ledger.storage.marks import marks_of
from ledger.storage.tables.entry import Entry, Fact
from ledger.storage.verbs import LotVerbs

Row = TypeVar("Row", bound=SQLModel)


class Transaction(LotVerbs):
    """One operation being written; it becomes one entry, or nothing."""

    def __init__(self, session: Session, *, who: str, verb: str, reverses: int | None) -> None:
        """`reverses` names the entry that an undo takes back."""
        self._session = session
        self.who = who
        self._said: str | None = None
        self._tables: set[str] = set()  # that hold rows of this entry
        self.verb = verb
        self.reverses = reverses
        self.last: Callable[[], None] = lambda: None  # done once the entry is whole, and before it is committed
        raw = session.connection().connection.driver_connection
        assert isinstance(raw, sqlite3.Connection)
        self._raw = raw
        last = raw.execute("SELECT id, digest FROM entry ORDER BY id DESC LIMIT 1").fetchone()
        self.entry: int = last["id"] + 1 if last else 1
        self.previous: str = last["digest"] if last else GENESIS

    @property
    def rows(self) -> sqlite3.Connection:
        """The same transaction's connection, for view functions; what was added is flushed first."""
        self._session.flush()
        return self._raw

    def add(self, row: Row) -> Row:
        """Write one row of this entry and return it with its number."""
        if hasattr(row, "entry_id"):
            row.entry_id = self.entry
            self._tables.add(str(row.__tablename__))
        self._session.add(row)
        self._session.flush()
        return row

    def add_all(self, rows: Iterable[Fact]) -> None:
        """Write several rows of this entry, in their order."""
        for table, alike in groupby(rows, lambda row: str(row.__tablename__)):
            self.add_rows(table, [row.model_dump(exclude={"id", "entry_id"}) for row in alike])

    def add_rows(self, table: str, rows: Sequence[Mapping[str, object]]) -> Sequence[int]:
        """Write rows of one table, each with the same columns, in one statement; their numbers follow the last there.

        The table goes by its name, so that a write need not map those whose rows it never holds.
        """
        last = self.rows.execute(f"SELECT coalesce(max(id), 0) FROM {table}").fetchone()[0]
        numbers = range(last + 1, last + 1 + len(rows))
        if rows:
            self._tables.add(table)
            columns = tuple(rows[0])
            named = ", ".join(f'"{one}"' for one in ("id", "entry_id", *columns))
            self._session.connection().exec_driver_sql(
                f"INSERT INTO {table} ({named}) VALUES (?, ?{', ?' * len(columns)})",
                [
                    (id_, self.entry, *map(_stored, map(row.__getitem__, columns)))
                    for id_, row in zip(numbers, rows, strict=True)
                ],
            )
        return numbers

    def say(self, sentence: str) -> None:
        """State what was done, for `history`."""
        self._said = sentence

    def close(self, *, who: str, now: datetime) -> str:
        """Write the entry itself, with the digest over its rows; returns the digest."""
        assert self._said is not None, f"{self.verb} did not say what it did"
        self.add_rows("entry_salt", [{"salt": secrets.token_hex(16)}])
        written = list(rows_of(self.rows, self.entry, self._tables))
        head = Head(
            id=self.entry,
            recorded_at=now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"),
            who=who,
            verb=self.verb,
            said=self._said,
            reverses=self.reverses,
            program=__version__,
            previous=self.previous,
            marks=marks_of(written),
        )
        digest = entry_digest(head, (line for line, _ in written))
        self._session.add(Entry(**asdict(head), digest=digest))
        self._session.flush()
        self.last()
        return digest


def _stored(value: object) -> object:
    return value.isoformat() if isinstance(value, date) else value
