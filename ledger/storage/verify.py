"""Proves that a ledger file is what was written: chain, schema, contents, and what must always hold."""

import hashlib
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass

from ledger.domain.invariants import Facts, Finding, MovementFact, findings
from ledger.fileformat import SCHEMA_VERSION
from ledger.storage.chain import GENESIS, entry_digest, fact_queries, fact_tables
from ledger.storage.migrations import migrate
from ledger.storage.personal import salted_digest


@dataclass(frozen=True)
class Verdict:
    """What was checked and what was found."""

    entries: int
    head: str  # digest of the last entry: copied elsewhere, it seals everything up to it
    findings: tuple[Finding, ...]


def verify(rows: sqlite3.Connection) -> Verdict:
    """Check a whole ledger; everything that is wrong is found, not only the first."""
    found = [*_file(rows), *_schema(rows)]
    if not found:
        found += [*_chain(rows), *_strays(rows), *_contents(rows), *_people(rows), *findings(_facts(rows))]
    last = rows.execute("SELECT id, digest FROM entry ORDER BY id DESC LIMIT 1").fetchone()
    return Verdict(last["id"] if last else 0, last["digest"] if last else GENESIS, tuple(found))


def _file(rows: sqlite3.Connection) -> Iterator[Finding]:
    for row in rows.execute("PRAGMA integrity_check"):
        if row[0] != "ok":
            yield Finding(f"the file is damaged: {row[0]}")
    for row in rows.execute("PRAGMA foreign_key_check"):
        yield Finding(f"a row of {row[0]} points at nothing")


def _schema(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Tables, guards and views are those the migrations give, none changed or missing."""
    clean = sqlite3.connect(":memory:", isolation_level=None)
    try:
        migrate(clean, to=SCHEMA_VERSION)
        query = "SELECT type || ' ' || name, sql FROM sqlite_schema WHERE sql IS NOT NULL"
        wanted, real = dict(clean.execute(query).fetchall()), dict(map(tuple, rows.execute(query).fetchall()))
    finally:
        clean.close()
    for name in sorted(wanted.keys() | real.keys()):
        if wanted.get(name) != real.get(name):
            state = "is missing" if name not in real else "is not ours" if name not in wanted else "was changed"
            yield Finding(f"the {name} {state}")


def _chain(rows: sqlite3.Connection) -> Iterator[Finding]:
    queries = fact_queries(rows)
    previous, number = GENESIS, 0
    for row in rows.execute("SELECT * FROM entry ORDER BY id").fetchall():
        number += 1
        if row["id"] != number:
            yield Finding(f"entry {number} is missing", number)
            number = row["id"]
        digest = entry_digest(
            rows,
            queries,
            entry_id=row["id"],
            recorded_at=row["recorded_at"],
            who=row["who"],
            verb=row["verb"],
            said=row["said"],
            reverses=row["reverses"],
            program=row["program"],
            previous=row["previous"],
        )
        if digest != row["digest"]:
            yield Finding(f"entry {row['id']} ({row['said']}) is not what was written", row["id"])
        if row["previous"] != previous:
            yield Finding(f"entry {row['id']} does not follow the entry before it", row["id"])
        previous = row["digest"]


def _strays(rows: sqlite3.Connection) -> Iterator[Finding]:
    for table in fact_tables(rows):
        for row in rows.execute(
            f"SELECT entry_id, count(*) AS n FROM {table} "
            "WHERE entry_id NOT IN (SELECT id FROM entry) GROUP BY entry_id"
        ):
            yield Finding(f"{row['n']} rows of {table} belong to no entry", row["entry_id"])


def _contents(rows: sqlite3.Connection) -> Iterator[Finding]:
    for row in rows.execute("SELECT digest, content FROM attached_content"):
        if hashlib.sha256(row["content"]).hexdigest() != row["digest"]:
            yield Finding(f"the attached file {row['digest'][:16]}… is not what was attached")


def _people(rows: sqlite3.Connection) -> Iterator[Finding]:
    for row in rows.execute(
        """
        SELECT p.id, p.entry_id, p.salted_digest, t.*,
          EXISTS (SELECT 1 FROM erasure e WHERE e.personal_id = p.id) AS erased
        FROM personal p LEFT JOIN personal_text t ON t.personal_id = p.id
        """
    ):
        if row["personal_id"] is None:
            if not row["erased"]:
                yield Finding(
                    f"the personal details of entry {row['entry_id']} are gone without an erasure", row["entry_id"]
                )
        elif salted_digest(row["salt"], dict(row)) != row["salted_digest"]:
            yield Finding(f"the personal details of entry {row['entry_id']} are not what was written", row["entry_id"])


def _facts(rows: sqlite3.Connection) -> Facts:
    return Facts(
        movements=tuple(
            MovementFact(row["entry_id"], row["lot"], row["place"], row["on"], row["quantity"], row["kind"])
            for row in rows.execute(
                'SELECT v.entry_id, l.code AS lot, p.name AS place, v."on", v.quantity, v.kind FROM movement v '
                "JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id ORDER BY v.id"
            )
        ),
        moved_by_entry=tuple(
            (row[0], row[1], row[2])
            for row in rows.execute(
                "SELECT v.entry_id, l.code, sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id "
                "WHERE v.kind = 'moved' GROUP BY v.entry_id, v.lot_id"
            )
        ),
        dispatched_by_customer=tuple(
            (row[0], row[1], row[2])
            for row in rows.execute(
                "SELECT c.code, l.code, -sum(v.quantity) FROM movement v JOIN customer c ON c.id = v.customer_id "
                "JOIN lot l ON l.id = v.lot_id GROUP BY v.customer_id, v.lot_id"
            )
        ),
        bars_without_release=tuple(
            row[0]
            for row in rows.execute(
                "SELECT DISTINCT l.code FROM live_movement v JOIN lot l ON l.id = v.lot_id "
                "JOIN material m ON m.id = l.material_id WHERE m.kind = 'soap' AND v.quantity < 0 "
                "AND v.kind IN ('sold', 'dispatched', 'given') AND NOT EXISTS "
                "(SELECT 1 FROM decision d WHERE d.lot_id = l.id AND d.verdict = 'released')"
            )
        ),
    )
