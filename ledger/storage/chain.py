"""The entry chain: the digest of an entry covers every row it wrote and the digest before it."""

import hashlib
import json
import sqlite3
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from heapq import merge
from itertools import groupby
from operator import itemgetter

FORMAT = 1
GENESIS = "0" * 64
_JSON = json.JSONEncoder(ensure_ascii=False).encode  # made once: json.dumps makes one at each call


@dataclass(frozen=True)
class Head:
    """What an entry says of itself; all of it is in its digest."""

    id: int
    recorded_at: str
    who: str
    verb: str
    said: str
    reverses: int | None
    program: str
    previous: str
    marks: str | None = None  # of its rows, in ledgers of format 7 and later: `storage.marks`


def entry_digest(head: Head, lines: Iterable[str]) -> str:
    """SHA-256 over the head of an entry and the canonical text of its rows, a line each, then over its marks."""
    text = _JSON(
        [FORMAT, head.id, head.recorded_at, head.who, head.verb, head.said, head.reverses, head.program, head.previous]
    )
    marks = (f"marks {head.marks}",) if head.marks else ()
    return hashlib.sha256("\n".join((text, *lines, *marks)).encode()).hexdigest()


def fact_tables(raw: sqlite3.Connection) -> tuple[str, ...]:
    """Every table whose rows belong to an entry, by name; a table of hers with such a column points at none."""
    names = raw.execute(
        "SELECT s.name FROM main.sqlite_schema s, pragma_foreign_key_list(s.name) k "
        "WHERE s.type = 'table' AND k.\"from\" = 'entry_id' AND k.\"table\" = 'entry' ORDER BY s.name"
    )
    return tuple(row[0] for row in names)


def canonical_sql(raw: sqlite3.Connection, table: str) -> str:
    """The query that gives the rows of one table as (entry, canonical text, number).

    Columns go by name and NULLs are left out, so that a nullable column added later changes nothing.
    """
    columns = sorted(row[1] for row in raw.execute(f"PRAGMA main.table_info({table})"))
    pairs = ",".join(f"'{column}',\"{column}\"" for column in columns)
    return f"SELECT entry_id, '{table} '||json_patch('{{}}',json_object({pairs})) AS line, id FROM main.{table}"


def rows_of(raw: sqlite3.Connection, entry_id: int, tables: Iterable[str] | None = None) -> Iterator[tuple[str, int]]:
    """The canonical text of each row of one entry and its number, by table, then by row.

    Only `tables` are looked into, where the writer knows which hold its rows: most entries have some in three of
    forty, and reading the schema of all takes longer than the entry. What a later format adds is empty for it.
    """
    for table in sorted(fact_tables(raw) if tables is None else tables):
        query = f"{canonical_sql(raw, table)} WHERE entry_id = ? ORDER BY id"
        yield from ((row[1], row[2]) for row in raw.execute(query, (entry_id,)).fetchall())


def lines_by_entry(raw: sqlite3.Connection, tables: Sequence[str]) -> Iterator[tuple[int, Sequence[str]]]:
    """The canonical text of the rows of every entry in turn: one pass over each of `tables`, in step.

    A table of hers may belong to an entry as well, so the tables are named.
    """

    def of_table(place: int, table: str) -> Iterator[tuple[int, int, list[str]]]:
        cursor = raw.cursor()
        cursor.row_factory = None  # a plain tuple is half the work
        found = cursor.execute(f"{canonical_sql(raw, table)} ORDER BY entry_id, id")
        for entry_id, rows in groupby(found, key=itemgetter(0)):
            yield entry_id, place, [row[1] for row in rows]

    streams = [of_table(place, table) for place, table in enumerate(tables)]
    for entry_id, parts in groupby(merge(*streams), key=itemgetter(0)):
        yield entry_id, [line for part in parts for line in part[2]]


def salted_digest(salt: str, details: Mapping[str, str | None]) -> str:
    """SHA-256 over the salt and the details, so that a change shows while an erasure tells nothing."""
    fields = ("name", "phone", "email", "address", "health")
    text = json.dumps([salt, *(details[field] for field in fields)], ensure_ascii=False)
    return hashlib.sha256(text.encode()).hexdigest()
