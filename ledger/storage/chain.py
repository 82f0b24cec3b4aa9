"""The entry chain: the digest of an entry covers every row it wrote and the digest before it."""

import hashlib
import json
import sqlite3
from collections.abc import Iterator

FORMAT = 1
GENESIS = "0" * 64


def fact_tables(raw: sqlite3.Connection) -> tuple[str, ...]:
    """Every table whose rows belong to an entry, by name."""
    names = raw.execute(
        "SELECT s.name FROM main.sqlite_schema s, pragma_table_info(s.name) c "
        "WHERE s.type = 'table' AND c.name = 'entry_id' ORDER BY s.name"
    )
    return tuple(row[0] for row in names)


def canonical_sql(raw: sqlite3.Connection, table: str) -> str:
    """The query that gives the rows of one entry in one table as canonical text.

    Columns go by name and NULLs are left out, so that a nullable column added later changes nothing.
    """
    columns = sorted(row[1] for row in raw.execute(f"PRAGMA table_info({table})"))
    pairs = ",".join(f"'{column}',\"{column}\"" for column in columns)
    return f"SELECT '{table} '||json_patch('{{}}',json_object({pairs})) FROM main.{table} WHERE entry_id=? ORDER BY id"


def fact_queries(raw: sqlite3.Connection) -> tuple[str, ...]:
    """The canonical queries of every table, in order."""
    return tuple(canonical_sql(raw, table) for table in fact_tables(raw))


def _lines(raw: sqlite3.Connection, queries: tuple[str, ...], entry_id: int) -> Iterator[str]:
    for query in queries:
        for row in raw.execute(query, (entry_id,)):
            yield row[0]


def entry_digest(
    raw: sqlite3.Connection,
    queries: tuple[str, ...],
    *,
    entry_id: int,
    recorded_at: str,
    who: str,
    verb: str,
    said: str,
    reverses: int | None,
    program: str,
    previous: str,
) -> str:
    """SHA-256 over the head of an entry and the canonical text of its rows."""
    head = json.dumps(
        [FORMAT, entry_id, recorded_at, who, verb, said, reverses, program, previous],
        ensure_ascii=False,
    )
    digest = hashlib.sha256(head.encode())
    for line in _lines(raw, queries, entry_id):
        digest.update(b"\n")
        digest.update(line.encode())
    return digest.hexdigest()
