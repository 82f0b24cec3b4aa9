"""The digest of an entry, worked out a second time by other means."""

import hashlib
import json
import sqlite3
from typing import Any

from ledger.storage.chain import GENESIS, canonical_sql, fact_tables


def digest_by_hand(raw: sqlite3.Connection, entry: sqlite3.Row) -> str:
    """SHA-256 of the head as a JSON list, then of each row as JSON: columns by name, what is missing left out."""
    head = [1, *(entry[name] for name in ("id", "recorded_at", "who", "verb", "said", "reverses", "program"))]
    lines = [json.dumps([*head, entry["previous"]], ensure_ascii=False)]
    for table in sorted(fact_tables(raw)):
        for row in raw.execute(f"SELECT * FROM {table} WHERE entry_id = ? ORDER BY id", (entry["id"],)):
            known = {name: row[name] for name in sorted(row.keys()) if row[name] is not None}
            lines.append(f"{table} {json.dumps(known, ensure_ascii=False, separators=(',', ':'))}")
    if entry["marks"]:
        lines.append(f"marks {entry['marks']}")
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()


def opened(shop: Any) -> sqlite3.Connection:
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    raw.row_factory = sqlite3.Row
    return raw


def test_every_digest_is_what_json_and_sha256_give(full: Any) -> None:
    raw = opened(full)
    previous = GENESIS
    attested = {row["of_entry"]: row["digest"] for row in raw.execute("SELECT * FROM blanked")}
    assert attested  # one was erased, of whom there was a note
    for entry in raw.execute("SELECT * FROM entry ORDER BY id").fetchall():
        assert entry["previous"] == previous
        assert attested.get(entry["id"], entry["digest"]) == digest_by_hand(raw, entry)
        previous = entry["digest"]


def test_a_nullable_column_and_a_new_table_change_no_canonical_text(full: Any) -> None:
    raw = opened(full)
    before = [tuple(row) for row in raw.execute(canonical_sql(raw, "lot") + " ORDER BY id")]
    raw.execute("ALTER TABLE lot ADD COLUMN aroma TEXT")
    raw.execute("CREATE TABLE shelf (id INTEGER PRIMARY KEY, entry_id INTEGER)")
    assert [tuple(row) for row in raw.execute(canonical_sql(raw, "lot") + " ORDER BY id")] == before
