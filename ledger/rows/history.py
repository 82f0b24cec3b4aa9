"""What was written, entry by entry."""

import sqlite3
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from ledger.domain.keep.clock import written_by
from ledger.errors import BadInput, LedgerError
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


def history(rows: sqlite3.Connection, *, last: int | None = None, since: int = 0) -> tuple[HistoryLine, ...]:
    """The entries, oldest first; only the last so many, or those from a number on, where told."""
    found = rows.execute(
        """
        SELECT e.id AS entry, e.recorded_at, e.who, e.verb, e.said, e.reverses, r.id AS undone_by, e.digest
        FROM entry e LEFT JOIN entry r ON r.reverses = e.id WHERE e.id >= ? ORDER BY e.id DESC LIMIT ?
        """,
        (since, -1 if last is None else last),
    ).fetchall()
    return tuple(HistoryLine(**dict(row)) for row in reversed(found))


def history_since(path: Path, entry: int) -> tuple[HistoryLine, ...] | None:
    """The entries of a ledger from a number on, as its file stands now; None where it cannot be asked."""
    try:
        rows = open_rows(path)
        try:
            return history(rows, since=entry)
        finally:
            rows.close()
    except (LedgerError, OlderLedger, sqlite3.Error, OSError):
        return None


class EntryRow(NamedTuple):
    """What one entry says, which entry it takes back, and which took it back."""

    said: str
    reverses: int | None
    undone_by: int | None


def entry_written(rows: sqlite3.Connection, number: int) -> EntryRow:
    """One entry. Raises BadInput for one that is not there."""
    row = rows.execute(
        "SELECT e.said, e.reverses, r.id FROM entry e LEFT JOIN entry r ON r.reverses = e.id WHERE e.id = ?", (number,)
    ).fetchone()
    if row is None:
        raise BadInput(f"There is no entry {number}; see: soapledger history")
    return EntryRow(*row)


def digest_of(rows: sqlite3.Connection, number: int) -> str | None:
    """The digest of an entry; None for one that is not there."""
    row = rows.execute("SELECT digest FROM entry WHERE id = ?", (number,)).fetchone()
    return row[0] if row else None


def last_entry(rows: sqlite3.Connection) -> int:
    """The last entry that was not taken back and is no undo. Raises BadInput when there is none."""
    row = rows.execute(
        "SELECT max(id) FROM entry e WHERE reverses IS NULL "
        "AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)"
    ).fetchone()
    if row[0] is None:
        raise BadInput("Nothing was written yet, so there is nothing to take back.")
    return int(row[0])


def starts_the_ledger(rows: sqlite3.Connection, entry: int) -> bool:
    """Whether the entry made the places that every ledger has."""
    return rows.execute("SELECT 1 FROM place WHERE entry_id = ? AND kind = 'workshop'", (entry,)).fetchone() is not None


def erases(rows: sqlite3.Connection, entry: int) -> bool:
    """Whether the entry erased personal details, or a text that named someone."""
    query = "SELECT 1 FROM erasure WHERE entry_id = ?1 UNION ALL SELECT 1 FROM blanked WHERE entry_id = ?1"
    return rows.execute(query, (entry,)).fetchone() is not None


def holds_for_a_recall(rows: sqlite3.Connection, entry: int) -> bool:
    """Whether the entry held lots for what was asked of all of them at once."""
    query = "SELECT 1 FROM entry WHERE id = ? AND verb IN ('recall hold', 'recall open')"
    return rows.execute(query, (entry,)).fetchone() is not None


def decides(rows: sqlite3.Connection, entry: int) -> bool:
    """Whether the entry decides about a lot or a batch that an earlier one made."""
    query = """
        SELECT 1 FROM decision d LEFT JOIN lot l ON l.id = d.lot_id LEFT JOIN batch b ON b.id = d.batch_id
        WHERE d.entry_id = ? AND coalesce(l.entry_id, b.entry_id) <> d.entry_id
    """
    return rows.execute(query, (entry,)).fetchone() is not None


def last_entry_before(rows: sqlite3.Connection, moment: str) -> int:
    """The last entry written before a UTC moment (`written_by`). Raises BadInput when there was none."""
    entries = rows.execute("SELECT id, recorded_at FROM entry ORDER BY id").fetchall()
    written = written_by([row["recorded_at"] for row in entries], moment)
    if not written:
        raise BadInput("Nothing was written in this ledger by then; see: soapledger history")
    return int(entries[written - 1]["id"])
