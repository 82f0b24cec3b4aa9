"""What was written, entry by entry."""

import sqlite3
from dataclasses import dataclass
from pathlib import Path

from ledger.errors import LedgerError
from ledger.rows.opened import OlderLedger, open_rows


@dataclass(frozen=True)
class HistoryLine:
    """One entry; `undone_by` names the entry that took it back."""

    entry: int
    recorded_at: str
    who: str
    verb: str
    said: str
    reverses: int | None
    undone_by: int | None
    digest: str


def history(rows: sqlite3.Connection, *, last: int | None = None) -> tuple[HistoryLine, ...]:
    """The entries, oldest first; only the last so many where told."""
    found = rows.execute(
        """
        SELECT e.id AS entry, e.recorded_at, e.who, e.verb, e.said, e.reverses, r.id AS undone_by, e.digest
        FROM entry e LEFT JOIN entry r ON r.reverses = e.id ORDER BY e.id DESC LIMIT ?
        """,
        (-1 if last is None else last,),
    ).fetchall()
    return tuple(HistoryLine(**dict(row)) for row in reversed(found))


def history_if_any(path: Path) -> tuple[HistoryLine, ...] | None:
    """Every entry of a ledger as its file stands now; None where it cannot be asked."""
    try:
        rows = open_rows(path)
        try:
            return history(rows)
        finally:
            rows.close()
    except (LedgerError, OlderLedger, sqlite3.Error, OSError):
        return None
