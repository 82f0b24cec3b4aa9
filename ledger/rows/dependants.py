"""What stands on an entry, so that it cannot be taken back before that is."""

import sqlite3
from collections import Counter
from typing import NamedTuple


class ForeignKey(NamedTuple):
    """A column of a table of facts that names a row of another."""

    table: str
    column: str
    parent: str


def foreign_keys(rows: sqlite3.Connection) -> tuple[ForeignKey, ...]:
    """Every such column, as the schema itself says; the entry a row belongs to is none."""
    found = rows.execute(
        'SELECT s.name, k."from", k."table" FROM main.sqlite_schema s, pragma_foreign_key_list(s.name) k '
        "WHERE s.type = 'table' AND k.\"to\" = 'id' AND k.\"table\" <> 'entry' "
        "AND EXISTS (SELECT 1 FROM main.sqlite_schema v WHERE v.name = 'live_' || s.name) ORDER BY s.name, k.seq, k.id"
    )
    return tuple(ForeignKey(*row) for row in found)


class Dependant(NamedTuple):
    """Something that stands on an entry, in her words; a decision is not taken back itself."""

    name: str
    decision: bool = False


def binding(table: str) -> str:
    """Which rows of a table bind what they name.

    An acceptance says only that a lot was looked at; an erasure holds whether or not what was erased still counts; and
    what an upgrade kept of a recipe or a decision goes with it.
    """
    never = dict.fromkeys(("erasure", "recipe_figures", "decision_doubt"), "0")
    return {"decision": "t.verdict <> 'accepted'", **never}.get(table, "1")


def dependants(rows: sqlite3.Connection, entry: int) -> tuple[Dependant, ...]:
    """What later entries built on this one and still counts, each once."""
    built = [*_by_key(rows, entry), *map(Dependant, _by_work(rows, entry))]
    if not built:  # else named already, and more plainly
        built = [Dependant(name) for part in (_by_stock, _by_return) for name in part(rows, entry)]
    return tuple(dict.fromkeys(built))


def _by_key(rows: sqlite3.Connection, entry: int) -> list[Dependant]:
    """Rows of other entries that name a row of this one."""
    found, keys = [], foreign_keys(rows)
    written = {
        table
        for table in {key.parent for key in keys}
        if rows.execute(f"SELECT 1 FROM {table} WHERE entry_id = ?", (entry,)).fetchone()
    }
    for key in keys:
        if key.parent not in written:
            continue
        query = (
            f'SELECT t.* FROM live_{key.table} t JOIN {key.parent} p ON p.id = t."{key.column}" '
            f"WHERE p.entry_id = :entry AND t.entry_id <> :entry AND {binding(key.table)} ORDER BY t.id"
        )
        for row in rows.execute(query, {"entry": entry}).fetchall():
            found.append(_name(rows, key.table, row))
    return found


def _by_work(rows: sqlite3.Connection, entry: int) -> list[str]:
    """What came of a batch after this entry put something into it, or poured it."""
    query = """
        WITH fed AS (SELECT batch_id AS id FROM movement WHERE entry_id = :entry AND kind = 'consumed'
                     UNION SELECT batch_id FROM reading WHERE entry_id = :entry AND what IN ('poured', 'left out'))
        SELECT 'lot ' || l.code FROM live_lot l JOIN fed ON fed.id = l.batch_id WHERE l.entry_id > :entry
        UNION ALL
        SELECT 'the pouring of batch ' || b.code || ' (entry ' || g.entry_id || ')' FROM live_reading g
        JOIN fed ON fed.id = g.batch_id JOIN batch b ON b.id = fed.id WHERE g.what = 'poured' AND g.entry_id > :entry
        UNION ALL
        SELECT DISTINCT 'the correction of line ' || p.number || ' (entry ' || v.entry_id || ')' FROM live_movement v
        JOIN plan_line p ON p.id = v.plan_line_id WHERE v.entry_id > :entry AND EXISTS
          (SELECT 1 FROM movement o WHERE o.entry_id = :entry AND o.plan_line_id = v.plan_line_id)
    """
    return [row[0] for row in rows.execute(query, {"entry": entry})]


def _by_stock(rows: sqlite3.Connection, entry: int) -> list[str]:
    """What was taken later from where this entry had put it."""
    found = []
    put = rows.execute("SELECT DISTINCT lot_id, place_id FROM movement WHERE entry_id = ? AND quantity > 0", (entry,))
    for lot_id, place_id in put.fetchall():
        days: Counter[str] = Counter()
        for on, quantity in rows.execute(
            'SELECT "on", quantity FROM movement WHERE lot_id = ? AND place_id = ? AND entry_id <> ?',
            (lot_id, place_id, entry),
        ):
            days[on] += quantity
        held, low = 0, 0
        for on in sorted(days):
            held += days[on]
            low = min(low, held)
        if low < 0:
            query = (
                "SELECT DISTINCT v.entry_id FROM live_movement v WHERE v.lot_id = ? AND v.place_id = ? "
                "AND v.quantity < 0 AND v.entry_id <> ? ORDER BY v.entry_id"
            )
            takers = rows.execute(query, (lot_id, place_id, entry)).fetchall()
            found += [_entry(rows, row[0]) for row in takers]
    return found


def _by_return(rows: sqlite3.Connection, entry: int) -> list[str]:
    """Bars that came back later from where this entry had sent or sold them."""
    found = []
    sent = rows.execute(
        "SELECT DISTINCT lot_id, customer_id FROM movement "
        "WHERE entry_id = ? AND kind IN ('dispatched', 'given', 'sold')",
        (entry,),
    )
    for lot_id, customer_id in sent.fetchall():
        out = rows.execute(
            "SELECT coalesce(-sum(quantity), 0) FROM movement WHERE lot_id = ? AND customer_id IS ? "
            "AND entry_id <> ? AND kind IN ('dispatched', 'given', 'sold', 'returned')",
            (lot_id, customer_id, entry),
        ).fetchone()[0]
        if out < 0:
            query = (
                "SELECT entry_id FROM live_movement WHERE lot_id = ? AND customer_id IS ? "
                "AND kind = 'returned' AND entry_id > ? ORDER BY entry_id"
            )
            found += [_entry(rows, row[0]) for row in rows.execute(query, (lot_id, customer_id, entry)).fetchall()]
    return found


def _entry(rows: sqlite3.Connection, number: int) -> str:
    said = rows.execute("SELECT said FROM entry WHERE id = ?", (number,)).fetchone()[0]
    return f"entry {number} ({str(said).rstrip('.')})"


def _name(rows: sqlite3.Connection, table: str, row: sqlite3.Row) -> Dependant:
    """A row in her words: the batch it belongs to, its own code, or else its entry."""
    columns = row.keys()
    if table == "decision":
        return Dependant(_entry(rows, row["entry_id"]), decision=True)
    if "batch_id" in columns and row["batch_id"] is not None:
        code = rows.execute("SELECT code FROM batch WHERE id = ?", (row["batch_id"],)).fetchone()[0]
        return Dependant(f"batch {code}")
    if table in ("batch", "lot", "recipe", "material", "supplier", "customer"):
        return Dependant(f"{table} {row['code']}")
    return Dependant(_entry(rows, row["entry_id"]))
