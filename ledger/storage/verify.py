"""Proves that a ledger file is what was written: the file, its schema, the chain, what is attached, people."""

import hashlib
import sqlite3
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from contextlib import closing
from functools import cache
from pathlib import Path

from ledger.domain.keep.finding import Finding
from ledger.fileformat import LAID_REVISION, laid_revision_view, trouble
from ledger.storage import migrations
from ledger.storage.chain import (
    GENESIS,
    Head,
    entry_digest,
    fact_tables,
    lines_by_entry,
    rows_of,
    salted_digest,
)
from ledger.storage.marks import changed, row_named


def verify(rows: sqlite3.Connection) -> tuple[Finding, ...]:
    """Everything in the file that is not as it was written, not only the first; empty when all is well.

    The schema comes first, and where a table or view is not ours nothing else is asked.
    """
    found = [*_guarded(_schema, rows)]
    if any(one.what.startswith(("the table ", "the view ")) for one in found):
        return tuple(found)
    for part in (_file, _pointers, _chain, _contents, _people):
        found += _guarded(part, rows)
    return tuple(found)


def verify_head(rows: sqlite3.Connection, last: int) -> tuple[Finding, ...]:
    """The same of the last entries alone: each has the digest of what it wrote, and follows the one before it."""
    return tuple(_guarded(lambda asked: _head_chain(asked, last), rows))


def _head_chain(rows: sqlite3.Connection, last: int) -> Iterator[Finding]:
    tables, attested = _ours(rows), dict(map(tuple, rows.execute(_ATTESTED).fetchall()))
    entries = rows.execute("SELECT * FROM entry ORDER BY id DESC LIMIT ?", (last + 1,)).fetchall()
    known = {row["id"]: row["digest"] for row in entries} | {0: GENESIS}
    for row in reversed(entries[:last]):
        was = attested.get(row["id"], row["digest"])
        if _digest_or_none(rows, _head(row), tables) != was:
            yield from changed(rows, row, was, tables)
        before = known.get(row["id"] - 1, "")
        if row["previous"] != before:
            yield _unlinked(row["id"], before)


def _rewritten(number: int) -> Finding:
    """That the own digest of an entry is another, of which the entry that erased in it attests how it reads."""
    words = f"entry {number}: its digest is not what was written"
    return Finding(words, number, "entry", f"entry {number}", "the digest that the next entry names")


def _unlinked(number: int, previous: str) -> Finding:
    words = f"entry {number} does not follow the one before it"
    return Finding(words, number, "entry", f"entry {number}", f"the digest {previous[:16]} of entry {number - 1}")


def remarks(rows: sqlite3.Connection) -> tuple[str, ...]:
    """What in the file is not as this program lays it and threatens no row of ours."""
    wanted, real = _laid_anew(migrations.migration_files()), _laid(rows)
    found = []
    if _of_earlier_rules(real):
        found.append("its views and guards are an earlier soapledger's, and are laid anew before the next entry")
    for name in sorted(wanted.keys() | real.keys()):
        kind = name.partition(" ")[0]
        if name not in wanted and (kind != "trigger" or not _hooked(rows, name, wanted)):
            found.append(f"the {name} is not soapledger's, and is left as it is")
        elif kind == "index" and wanted.get(name) != real.get(name):
            found.append(f"the {name} is not as soapledger lays it: answers may be slow, and nothing is lost")
    for table, row, parent in _dangling(rows, wanted, hers=True):
        found.append(f"row {row} of {table}, which is not soapledger's, points at a row of {parent} that is not there")
    return tuple(found)


def _guarded(part: Callable[[sqlite3.Connection], Iterator[Finding]], rows: sqlite3.Connection) -> Iterator[Finding]:
    """A part that cannot be read is itself a finding, and the other parts go on."""
    try:
        yield from part(rows)
    except sqlite3.Error as error:
        yield Finding(f"part of the file cannot be read ({error})")


def _file(rows: sqlite3.Connection) -> Iterator[Finding]:
    for row in rows.execute("PRAGMA integrity_check"):
        if row[0] != "ok":
            yield Finding(f"the file is damaged: {row[0].splitlines()[-1]}")


def _pointers(rows: sqlite3.Connection) -> Iterator[Finding]:
    for table, rowid, parent in _dangling(rows, _laid_anew(migrations.migration_files()), hers=False):
        name = row_named(rows, table, rowid)
        words = f"{name} points at a {parent.replace('_', ' ')} that is not there"
        yield Finding(words, _entry_of(rows, table, rowid), table, name, f"a row of {parent}")


def _dangling(rows: sqlite3.Connection, wanted: Collection[str], *, hers: bool) -> Iterator[tuple[str, int, str]]:
    for table, rowid, parent, _ in rows.execute("PRAGMA foreign_key_check").fetchall():
        if (f"table {table}" not in wanted) == hers:
            yield table, rowid, parent


def _entry_of(rows: sqlite3.Connection, table: str, rowid: int | None) -> int | None:
    if table not in fact_tables(rows):
        return None
    row = rows.execute(f"SELECT entry_id FROM {table} WHERE rowid = ?", (rowid,)).fetchone()
    return int(row[0]) if row else None


def _laid(rows: sqlite3.Connection) -> dict[str, str]:
    query = "SELECT type || ' ' || name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%'"
    return dict(map(tuple, rows.execute(query).fetchall()))


@cache
def _laid_anew(_files: tuple[Path, ...]) -> dict[str, str]:
    """What these migrations give a new file; laid once, since that takes longer than all else of a small ledger."""
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as clean:
        migrations.migrate(clean)
        return _laid(clean)


def _schema(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Tables, guards and views are those the migrations give, none changed or missing.

    A table, view or index she laid into the file herself changes nothing of ours; a trigger on a table of ours might.
    What an earlier program laid is held against its tables alone: the rest is laid anew before the next entry. For an
    index, and for what is hers, see `remarks`.
    """
    wanted, real = dict(_laid_anew(migrations.migration_files())), _laid(rows)
    by_name = {name.partition(" ")[2]: sql for name, sql in real.items()}
    for one in migrations.to_read():
        if one in by_name and not migrations.is_to_read(by_name[one]):  # hers, which stood there first
            del wanted[f"view {one}"]
    held = ("table ",) if _of_earlier_rules(real) else ("table ", "view ", "trigger ")
    sly = {name for name in real.keys() - wanted.keys() if _hooked(rows, name, wanted)}
    for name in sorted({name for name in wanted if name.startswith(held)} | sly):
        if wanted.get(name) != real.get(name):
            state = "is missing" if name not in real else "is not ours" if name not in wanted else "was changed"
            yield Finding(f"the {name} {state}", None, name.partition(" ")[2], None, _AS_LAID)


_AS_LAID = "as this soapledger lays it in a new ledger"


def _of_earlier_rules(real: Mapping[str, str]) -> bool:
    """Whether an earlier program laid the views and guards; the first had no number for them."""
    return real.get("view laid_revision") in {None, *map(laid_revision_view, range(1, LAID_REVISION))}


def _hooked(rows: sqlite3.Connection, name: str, wanted: Collection[str]) -> bool:
    """Whether something is a trigger on a table or view of ours."""
    kind, _, plain = name.partition(" ")
    query = "SELECT tbl_name FROM sqlite_schema WHERE type = 'trigger' AND name = ?"
    on = rows.execute(query, (plain,)).fetchone() if kind == "trigger" else None
    return on is not None and bool({f"table {on[0]}", f"view {on[0]}"} & set(wanted))


def newer_rules(rows: sqlite3.Connection) -> bool:
    """Whether a program that knows a higher revision of the guards and views laid them."""
    return migrations.laid_revision(rows) > LAID_REVISION


def _chain(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Every entry has the digest of what it wrote, follows the one before, and no row stands outside them."""
    previous, number = GENESIS, 0
    tables, attested = _ours(rows), dict(map(tuple, rows.execute(_ATTESTED).fetchall()))
    for row, digest in _each(rows, tables):
        if row is None:
            yield Finding(f"there are rows of an entry {digest} that was never written", int(digest))
            continue
        number += 1
        if row["id"] != number:
            last = row["id"] - 1
            many = f"entries {number} to {last} are" if last > number else f"entry {number} is"
            yield Finding(f"{many} missing", number, "entry", f"entry {number}", "every entry, one after the other")
            number = row["id"]
        was = attested.get(number, row["digest"])  # of what was erased since, the erasing entry says how it reads
        if digest != was:
            yield from changed(rows, row, was, tables)
        if row["previous"] != previous:
            yield _rewritten(number - 1) if number - 1 in attested else _unlinked(number, previous)
        previous = row["digest"]


def _each(rows: sqlite3.Connection, tables: Sequence[str]) -> Iterator[tuple[sqlite3.Row | None, str]]:
    """Every entry with its digest from what stands in the file now, and the numbers of entries that only have rows.

    One cursor goes over the entries and one over each table, in step, so that a ledger of any size is read in the same
    memory. Where something cannot be read, what is left is asked entry by entry, to name the one it is in.
    """
    done = 0
    try:
        groups = lines_by_entry(rows, tables)
        group = next(groups, None)
        for row in rows.execute("SELECT * FROM entry ORDER BY id"):
            while group and group[0] < row["id"]:
                yield None, str(group[0])
                group = next(groups, None)
            if group and group[0] == row["id"]:
                digest = entry_digest(_head(row), group[1])
                group = next(groups, None)
            else:
                digest = entry_digest(_head(row), ())
            done = row["id"]
            yield row, digest
        while group:
            yield None, str(group[0])
            group = next(groups, None)
    except sqlite3.Error:
        for row in rows.execute("SELECT * FROM entry WHERE id > ? ORDER BY id", (done,)):
            yield row, _digest_or_none(rows, _head(row), tables)


# How each entry reads of which something was erased, by the latest entry that erased; never by an earlier one.
_ATTESTED = "SELECT of_entry, digest FROM blanked WHERE of_entry < entry_id ORDER BY entry_id"


def _head(row: sqlite3.Row) -> Head:
    return Head(*map(row.__getitem__, Head.__dataclass_fields__))


def _ours(rows: sqlite3.Connection) -> tuple[str, ...]:
    """The tables of facts that this program laid; one of hers may name an entry as well."""
    wanted = _laid_anew(migrations.migration_files())
    return tuple(table for table in fact_tables(rows) if f"table {table}" in wanted)


def _digest_or_none(rows: sqlite3.Connection, head: Head, tables: Sequence[str]) -> str:
    try:
        return entry_digest(head, (line for line, _ in rows_of(rows, head.id, tables)))
    except sqlite3.Error as error:
        return str(trouble(error) or error)


def _contents(rows: sqlite3.Connection) -> Iterator[Finding]:
    for row in rows.execute("SELECT digest, content FROM attached_content").fetchall():
        users = rows.execute("SELECT name, entry_id FROM attachment WHERE digest = ?", (row["digest"],)).fetchall()
        if not users:
            yield Finding(f"the content {row['digest'][:16]} was attached by no entry")
        content = row["content"]
        erased = rows.execute(_ERASED_PAPER, (row["digest"],)).fetchone() is not None
        if content != b"" if erased else not _has(content, row["digest"]):
            for user in users:
                words = f"{user['name']}, attached by entry {user['entry_id']}, is not what was attached"
                expected = f"a paper of the SHA-256 {row['digest']}"
                yield Finding(words, user["entry_id"], "attached_content", user["name"], expected)


_ERASED_PAPER = """
SELECT 1 FROM blanked b JOIN attachment a ON a.id = b.of_row
WHERE b.of_table = 'attachment' AND b.of_column = 'content' AND a.digest = ?
"""


def _has(content: object, digest: str) -> bool:
    return isinstance(content, bytes) and hashlib.sha256(content).hexdigest() == digest


def _people(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Personal details are as they were written, or were erased by a decision that is kept."""
    for row in rows.execute(
        """
        SELECT p.id, p.entry_id, p.salted_digest, t.*,
               EXISTS (SELECT 1 FROM erasure e WHERE e.personal_id = p.id) AS erased
        FROM personal p LEFT JOIN personal_text t ON t.personal_id = p.id
        """
    ):
        entry, there = row["entry_id"], row["personal_id"] is not None
        if row["erased"] and there:
            yield _person(rows, row, "were erased and are there again", "nothing, since they were erased")
        elif not row["erased"] and not there:
            yield _person(rows, row, "are gone, and nobody decided so", f"as entry {entry} wrote them")
        elif there and salted_digest(row["salt"], dict(row)) != row["salted_digest"]:
            yield _person(rows, row, "are not what was written", f"as entry {entry} wrote them")


def _person(rows: sqlite3.Connection, row: sqlite3.Row, state: str, expected: str) -> Finding:
    """What is wrong with the details of one person, by whose they are."""
    whose = rows.execute(_WHOSE, (row["id"],)).fetchone()
    name = whose[0] if whose else f"personal {row['id']}"
    words = f"personal details of entry {row['entry_id']}, of {name}, {state}"
    return Finding(words, row["entry_id"], "personal_text", name, expected)


_WHOSE = """
SELECT 'customer ' || c.code FROM customer_revision r JOIN customer c ON c.id = r.customer_id WHERE r.personal_id = ?1
UNION ALL SELECT 'supplier ' || s.code FROM supplier_revision r JOIN supplier s ON s.id = r.supplier_id
WHERE r.personal_id = ?1
UNION ALL SELECT 'complaint ' || id FROM complaint WHERE personal_id = ?1
"""
