"""Take one entry back: an entry of its own that mirrors its movements."""

from dataclasses import dataclass

from ledger.errors import BadInput, Refused
from ledger.storage.book import Book
from ledger.storage.chain import fact_tables
from ledger.storage.tables import Movement
from ledger.views.reading import Row, Rows, day

# What only a later decision takes back.
_DECISIONS = ("lot accepted", "lot rejected", "lot on hold", "release", "reject", "recall hold", "batch discard")


@dataclass(frozen=True)
class Undone:
    """Which entry was taken back, and what it had said."""

    entry: int
    said: str


def undo(book: Book, number: int) -> Undone:
    """Take back one entry.

    Refused when something later depends on it (named), when it is a decision (superseded by a new one),
    an erasure, an undo, or was taken back already. Raises BadInput for an entry that is not there.
    """
    with book.write("undo", reverses=number) as tx:
        row = tx.rows.execute("SELECT verb, said, reverses FROM entry WHERE id = ?", (number,)).fetchone()
        if row is None:
            raise BadInput(f"There is no entry {number}; see: soapledger history")
        if row["reverses"] is not None:
            raise Refused(f"Entry {number} is itself an undo; do again what it took back.")
        if tx.rows.execute("SELECT 1 FROM entry WHERE reverses = ?", (number,)).fetchone():
            raise Refused(f"Entry {number} was taken back already.")
        if row["verb"] in _DECISIONS:
            raise Refused(
                f"Entry {number} is a decision ({row['said']}); a decision is not undone but followed by another."
            )
        if row["verb"] in ("init", "customer erase"):
            raise Refused(f"Entry {number} ({row['said']}) cannot be taken back.")
        if dependants := _dependants(tx.rows, number):
            raise Refused(
                f"Entry {number} ({row['said']}) cannot be taken back: {', '.join(dependants[:5])} depend"
                f"{'s' if len(dependants) == 1 else ''} on it. Take that back first."
            )
        for one in tx.rows.execute("SELECT * FROM movement WHERE entry_id = ? ORDER BY id DESC", (number,)).fetchall():
            tx.add(
                Movement(
                    lot_id=one["lot_id"],
                    place_id=one["place_id"],
                    on=day(one["on"]),
                    quantity=-one["quantity"],
                    kind=one["kind"],
                    batch_id=one["batch_id"],
                    plan_line_id=one["plan_line_id"],
                    customer_id=one["customer_id"],
                    money_minor=None if one["money_minor"] is None else -one["money_minor"],
                    note=f"takes back entry {number}",
                )
            )
        tx.say(f"Took back entry {number}: {row['said']}")
        return Undone(number, row["said"])


def last_entry(rows: Rows) -> int:
    """The last entry that was not taken back and is no undo. Raises BadInput when there is none."""
    row = rows.execute(
        "SELECT max(id) FROM entry e WHERE reverses IS NULL "
        "AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)"
    ).fetchone()
    if row[0] is None:
        raise BadInput("Nothing was written yet, so there is nothing to take back.")
    return int(row[0])


def _dependants(rows: Rows, entry: int) -> list[str]:
    """What later entries that still count built on rows of this one, in her words; found by foreign key."""
    found: list[str] = []
    for table in fact_tables(rows):
        for key in rows.execute(f"PRAGMA foreign_key_list({table})").fetchall():
            if key["table"] == "entry" or key["table"] not in fact_tables(rows):
                continue
            query = (
                f'SELECT t.* FROM live_{table} t JOIN {key["table"]} p ON p.id = t."{key["from"]}" '
                "WHERE p.entry_id = ? AND t.entry_id <> ? ORDER BY t.id"
            )
            for row in rows.execute(query, (entry, entry)).fetchall():
                name = _name(rows, table, row)
                if name not in found:
                    found.append(name)
    return found


def _name(rows: Rows, table: str, row: Row) -> str:
    columns = row.keys()

    def code(of: str, number: int) -> str:
        return str(rows.execute(f"SELECT code FROM {of} WHERE id = ?", (number,)).fetchone()[0])

    if "batch_id" in columns and row["batch_id"] is not None:
        return f"batch {code('batch', row['batch_id'])}"
    if table == "batch":
        return f"batch {row['code']}"
    if "lot_id" in columns and row["lot_id"] is not None:
        return f"lot {code('lot', row['lot_id'])} (entry {row['entry_id']})"
    if table == "lot":
        return f"lot {row['code']}"
    if table in ("recipe", "material"):
        return f"{table} {row['code']}"
    return f"entry {row['entry_id']}"
