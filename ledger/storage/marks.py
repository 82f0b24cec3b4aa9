"""A short mark that an entry keeps of each row it wrote, so that a check can say which of them was changed.

The digest of the entry proves that something was; the marks are in it as well, and only tell where to look.
"""

import hashlib
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Literal, NamedTuple

from ledger.domain.keep.finding import Finding
from ledger.storage.chain import Head, entry_digest, rows_of

_LENGTH = 6  # hexadecimal figures: one change in 16 million is told of the whole entry in place of its row


class Place(NamedTuple):
    """A row that is not as it was written."""

    table: str
    row: int
    state: Literal["was changed", "is gone", "was added"]


def marks_of(rows: Iterable[tuple[str, int]]) -> str:
    """The marks of rows, each given by its canonical text and its number: runs of `table:first number:marks`."""
    runs: list[str] = []
    table, following = "", 0
    for line, number in rows:
        if not (line.startswith(f"{table} ") and number == following):
            table = line.partition(" ")[0]
            runs.append(f"{table}:{number}:")
        runs[-1] += _mark(line)
        following = number + 1
    return " ".join(runs)


def _mark(line: str) -> str:
    return hashlib.sha256(line.encode()).hexdigest()[:_LENGTH]


def differing(marks: str, rows: Iterable[tuple[str, int]]) -> list[Place]:
    """The rows that differ from the marks an entry keeps; none where it is what the entry says of itself."""
    kept, there = _by_row(marks), _by_row(marks_of(rows))
    return [
        Place(*key, "was added" if key not in kept else "is gone" if key not in there else "was changed")
        for key in sorted(kept.keys() | there.keys())
        if kept.get(key) != there.get(key)
    ]


def _by_row(marks: str) -> dict[tuple[str, int], str]:
    found = {}
    for run in marks.split():
        table, first, each = run.split(":")
        for at in range(0, len(each), _LENGTH):
            found[table, int(first) + at // _LENGTH] = each[at : at + _LENGTH]
    return found


def _by_code(rows: sqlite3.Connection, table: str, number: int | None, depth: int = 3) -> str | None:
    """A row by the code it has, or has through what it belongs to: 'lot L1-X', 'movement 17 of lot L1-X'."""
    row = rows.execute(f"SELECT * FROM main.{table} WHERE rowid = ?", (number,)).fetchone()
    if row is None:
        return None
    known = dict(zip(row.keys(), row, strict=True))
    plain = table.replace("_", " ")
    if known.get("code"):
        return f"{plain} {known['code']}"
    parents = {one[3]: one[2] for one in rows.execute(f"PRAGMA main.foreign_key_list({table})") if one[2] != "entry"}
    for column in sorted(parents, key=lambda one: _NEAREST.get(parents[one], len(_NEAREST))) if depth else ():
        if known[column] is not None and (of := _by_code(rows, parents[column], known[column], depth - 1)):
            return f"{plain} {number} of {of.partition(' of ')[2] or of}"
    return f"{plain} {number}"


_NEAREST = {table: place for place, table in enumerate(("lot", "batch", "plan_line", "recipe", "material"))}


_LISTED = 5


def changed(rows: sqlite3.Connection, entry: sqlite3.Row, was: str, tables: Sequence[str]) -> Iterator[Finding]:
    """Which rows of an entry are not what was written, as far as its marks tell; `was` is the digest it had.

    `tables` are those that hold rows of entries.
    """
    head, number = Head(*map(entry.__getitem__, Head.__dataclass_fields__)), entry["id"]
    opening = f"entry {number} ({entry['said']})"
    expected = f"as {entry['who']} wrote it, {entry['recorded_at']}"
    try:
        there = list(rows_of(rows, number, tables))
    except sqlite3.Error as error:
        yield Finding(f"{opening} holds a row that cannot be read ({error})", number, None, None, expected)
        return
    if head.marks is None:
        of = ", ".join(row_named(rows, line.partition(" ")[0], row) for line, row in there[:_LISTED])
        more = f" and {len(there) - _LISTED} more" if len(there) > _LISTED else ""
        words = f"{opening} is not what was written: what it says of itself, or one of its rows ({of}{more})"
        yield Finding(words, number, None, None, expected)
        return
    anew = replace(head, marks=marks_of(there))
    places = [] if entry_digest(anew, (line for line, _ in there)) == was else differing(head.marks, there)
    for place in places:
        name = row_named(rows, place.table, place.row)
        yield Finding(f"{opening}: {name} {place.state}", number, place.table, name, expected)
    if not places:
        words = f"{opening}: what it says of itself is not what was written"
        yield Finding(words, number, "entry", f"entry {number}", expected)


def row_named(rows: sqlite3.Connection, table: str, row: int | None) -> str:
    """A row by its trade name, as far as that can be read."""
    try:
        return _by_code(rows, table, row) or f"{table.replace('_', ' ')} {row}"
    except sqlite3.Error:
        return f"{table.replace('_', ' ')} {row}"
