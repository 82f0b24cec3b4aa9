"""Proves that a ledger file is what was written: the file, its schema, the chain, what is attached, people."""

import hashlib
import sqlite3
from collections.abc import Callable, Collection, Iterator, Mapping
from contextlib import closing
from functools import cache
from itertools import groupby
from pathlib import Path

from ledger.domain.keep.invariants import Finding
from ledger.fileformat import LAID_REVISION, laid_revision_view, trouble
from ledger.storage import migrations
from ledger.storage.chain import GENESIS, Head, all_lines, entry_digest, fact_tables, lines_of, salted_digest


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
    return (*found, *(f"{words}, which is not soapledger's" for words, _ in _dangling(rows, wanted, hers=True)))


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
    for words, entry in _dangling(rows, _laid_anew(migrations.migration_files()), hers=False):
        yield Finding(words, entry)


def _dangling(rows: sqlite3.Connection, wanted: Collection[str], *, hers: bool) -> Iterator[tuple[str, int | None]]:
    for table, rowid, parent, _ in rows.execute("PRAGMA foreign_key_check").fetchall():
        if (f"table {table}" not in wanted) == hers:
            entry = None if hers else _entry_of(rows, table, rowid)
            yield f"a row of {table} points at a row of {parent} that is not there", entry


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
    for one in migrations.to_read():
        if not migrations.is_to_read(real.get(f"view {one}", wanted[f"view {one}"])):  # hers, which stood there first
            del wanted[f"view {one}"]
    held = ("table ",) if _of_earlier_rules(real) else ("table ", "view ", "trigger ")
    sly = {name for name in real.keys() - wanted.keys() if _hooked(rows, name, wanted)}
    for name in sorted({name for name in wanted if name.startswith(held)} | sly):
        if wanted.get(name) != real.get(name):
            state = "is missing" if name not in real else "is not ours" if name not in wanted else "was changed"
            yield Finding(f"the {name} {state}")


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
    entries = rows.execute("SELECT * FROM entry ORDER BY id").fetchall()
    digests = _digests(rows, {row["id"]: _head(row) for row in entries})
    attested = dict(map(tuple, rows.execute(_ATTESTED).fetchall()))
    held = {row["id"] - 1: row["previous"] for row in entries}
    previous, number = GENESIS, 0
    for row in entries:
        number += 1
        if row["id"] != number:
            yield Finding(f"entry {number} is missing", number)
            number = row["id"]
        was = digests.pop(number, None)  # of what was erased since, the erasing entry says how it reads
        if was != attested.get(number, row["digest"]) or (number in attested and row["digest"] != held.get(number)):
            yield Finding(f"entry {number} ({row['said']}) is not what was written", number)
        if row["previous"] != previous:
            yield Finding(f"entry {number} does not follow the one before it", number)
        previous = row["digest"]
    for stray in sorted(digests):
        yield Finding(f"there are rows of an entry {stray} that was never written", stray)


# How each entry reads of which something was erased, by the latest entry that erased; never by an earlier one.
_ATTESTED = "SELECT of_entry, digest FROM blanked WHERE of_entry < entry_id ORDER BY entry_id"


def _head(row: sqlite3.Row) -> Head:
    return Head(**{name: row[name] for name in Head.__dataclass_fields__})


def _digests(rows: sqlite3.Connection, heads: dict[int, Head]) -> dict[int, str]:
    """The digest of each entry from what stands in the file now; rows of no entry have one as well."""
    digests = {number: entry_digest(head, ()) for number, head in heads.items()}
    try:
        for number, lines in groupby(all_lines(rows, _ours(rows)), key=lambda one: one[0]):
            head = heads.get(number)
            digests[number] = entry_digest(head, (line for _, line in lines)) if head else ""
    except sqlite3.Error:
        for number, head in heads.items():  # something cannot be read: one by one, to name the entry it is in
            digests[number] = _digest_or_none(rows, head)
    return digests


def _ours(rows: sqlite3.Connection) -> tuple[str, ...]:
    """The tables of facts that this program laid; one of hers may name an entry as well."""
    wanted = _laid_anew(migrations.migration_files())
    return tuple(table for table in fact_tables(rows) if f"table {table}" in wanted)


def _digest_or_none(rows: sqlite3.Connection, head: Head) -> str:
    try:
        return entry_digest(head, lines_of(rows, head.id, _ours(rows)))
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
                yield Finding(
                    f"{user['name']}, attached by entry {user['entry_id']}, is not what was attached", user["entry_id"]
                )


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
        SELECT p.entry_id, p.salted_digest, t.*,
               EXISTS (SELECT 1 FROM erasure e WHERE e.personal_id = p.id) AS erased
        FROM personal p LEFT JOIN personal_text t ON t.personal_id = p.id
        """
    ):
        entry, there = row["entry_id"], row["personal_id"] is not None
        if row["erased"] and there:
            yield Finding(f"personal details of entry {entry} were erased and are there again", entry)
        elif not row["erased"] and not there:
            yield Finding(f"personal details of entry {entry} are gone, and nobody decided so", entry)
        elif there and salted_digest(row["salt"], dict(row)) != row["salted_digest"]:
            yield Finding(f"personal details of entry {entry} are not what was written", entry)
