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
    built = [*_by_key(rows, entry), *map(Dependant, _by_work(rows, entry)), *_by_trust(rows, entry)]
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


# What later entries went by, without a row of theirs that names it: (entry, whether it is a decision).
_LEFT = "v.kind IN ('dispatched', 'given') OR (v.kind = 'moved' AND v.quantity > 0)"
# CROSS: from the assessment, which hardly any entry wrote, to the lots; not from all that ever left.
_ASSESSED = """
    SELECT v.entry_id, {decided} FROM (SELECT entry_id, recipe_id FROM assessment WHERE entry_id = :entry UNION
      SELECT c.entry_id, x.recipe_id FROM assessment_covers c JOIN assessment x ON x.id = c.assessment_id
      WHERE c.entry_id = :entry) a
    CROSS JOIN recipe_version n ON n.recipe_id = a.recipe_id
    CROSS JOIN batch b ON b.recipe_version_id = n.id CROSS JOIN lot l ON l.batch_id = b.id
    CROSS JOIN live_{table} v ON v.lot_id = l.id
    WHERE ({counts}) AND v.entry_id > :entry AND NOT EXISTS (SELECT 1 FROM live_assessment o
      WHERE o.recipe_id = a.recipe_id AND o.entry_id > :entry AND o.entry_id < v.entry_id)
    """
_TRUST = (
    # a text that was approved, by the labels printed of it
    """
    SELECT r.entry_id, 0 FROM label_approval a JOIN live_label_run r
      ON (r.lot_id, r.market, r.text_digest) = (a.lot_id, a.market, a.text_digest)
    WHERE a.entry_id = :entry AND r.entry_id > :entry
    """,
    # how many labels were used, by the release of the bars that carry them
    """
    SELECT d.entry_id, 1 FROM label_count c JOIN label_run r ON r.id = c.label_run_id
    JOIN live_decision d ON d.lot_id = r.lot_id AND d.verdict = 'released'
    WHERE c.entry_id = :entry AND d.entry_id > :entry
    """,
    # the assessment that was the latest, by releases and by bars that left
    _ASSESSED.format(decided=1, table="decision", counts="v.verdict = 'released'"),
    _ASSESSED.format(decided=0, table="movement", counts=_LEFT),
    # how much may be on the skin, by batches planned of what it limits; of a constituent, of whatever states any
    """
    SELECT b.entry_id, 0 FROM skin_limit k JOIN lot l ON l.material_id = k.material_id
      OR (k.material_id IS NULL AND l.material_id IN (SELECT material_id FROM live_constituent))
    JOIN plan_line p ON p.lot_id = l.id JOIN live_batch b ON b.id = p.batch_id
    WHERE k.entry_id = :entry AND b.entry_id > :entry
    """,
    # what a material or a lot contains, by labels approved and printed of what was made of it, at any depth
    """
    SELECT s.entry_id, 0 FROM (WITH RECURSIVE made(lot) AS (
        SELECT l.id FROM constituent c JOIN lot l ON l.id = c.lot_id
          OR (c.lot_id IS NULL AND l.material_id = c.material_id)
        WHERE c.entry_id = :entry
        UNION SELECT y.lot_id FROM made JOIN movement v ON v.lot_id = made.lot AND v.kind = 'consumed'
        JOIN movement y ON y.batch_id = v.batch_id AND y.kind = 'yielded') SELECT lot FROM made) m
    JOIN (SELECT lot_id, entry_id FROM live_label_approval UNION SELECT lot_id, entry_id FROM live_label_run) s
      ON s.lot_id = m.lot WHERE s.entry_id > :entry
    """,
    # what a person said that a name in statements is, by labels of whatever holds a lot whose statement has it
    """
    SELECT s.entry_id, 0 FROM (WITH RECURSIVE made(lot) AS (
        SELECT l.id FROM name_meant n JOIN constituent c ON c.name = n.name COLLATE NOCASE
          AND (n.material_id IS NULL OR c.material_id = n.material_id)
        JOIN lot l ON l.id = c.lot_id OR (c.lot_id IS NULL AND l.material_id = c.material_id)
        WHERE n.entry_id = :entry
        UNION SELECT y.lot_id FROM made JOIN movement v ON v.lot_id = made.lot AND v.kind = 'consumed'
        JOIN movement y ON y.batch_id = v.batch_id AND y.kind = 'yielded') SELECT lot FROM made) m
    JOIN (SELECT lot_id, entry_id FROM live_label_approval UNION SELECT lot_id, entry_id FROM live_label_run) s
      ON s.lot_id = m.lot WHERE s.entry_id > :entry
    """,
    # where bars are sold without a label, by those that went there since
    """
    SELECT v.entry_id, 0 FROM sold_bare s JOIN recipe_version n ON n.recipe_id = s.recipe_id
    JOIN batch b ON b.recipe_version_id = n.id JOIN lot l ON l.batch_id = b.id JOIN live_movement v ON v.lot_id = l.id
     AND ((v.kind IN ('dispatched', 'given') AND v.customer_id = s.customer_id)
          OR (v.kind = 'moved' AND v.quantity > 0 AND v.place_id IN
            (SELECT id FROM place WHERE id = s.place_id OR customer_id = s.customer_id)))
    WHERE s.entry_id = :entry AND s.bare = 1 AND v.entry_id > :entry
    """,
    # a pH read of the bars, and a deviation that was decided, by their pass or release
    """
    SELECT d.entry_id, 1 FROM (
      SELECT batch_id, entry_id, "on" FROM reading WHERE what = 'pH'
      UNION ALL SELECT v.batch_id, x.entry_id, '9999' FROM deviation_decision x
        JOIN deviation v ON v.id = x.deviation_id
    ) g JOIN lot l ON l.batch_id = g.batch_id AND l."on" <= g."on"
    JOIN live_decision d ON d.lot_id = l.id AND d.verdict IN ('passed', 'released')
    WHERE g.entry_id = :entry AND d.entry_id > :entry
    """,
)


def _by_trust(rows: sqlite3.Connection, entry: int) -> list[Dependant]:
    """What bars stand on that no row of theirs names: their labels, their assessment, what was stated and read."""
    found = {(row[0], bool(row[1])) for query in _TRUST for row in rows.execute(query, {"entry": entry}).fetchall()}
    return [Dependant(_entry(rows, number), decision) for number, decision in sorted(found)]


def after_a_hold(rows: sqlite3.Connection, entry: int) -> tuple[Dependant, ...]:
    """What was decided about the lots that an entry held, and what was made of them as lots on hold, since."""
    found = rows.execute(
        """
        SELECT d.entry_id, 1 FROM decision h JOIN live_decision d ON d.lot_id = h.lot_id
        WHERE h.entry_id = :entry AND d.entry_id > :entry
        UNION SELECT v.entry_id, 0 FROM decision h JOIN live_movement v ON v.lot_id = h.lot_id
        WHERE h.entry_id = :entry AND v.entry_id > :entry AND v.kind = 'consumed' ORDER BY 1
        """,
        {"entry": entry},
    )
    return tuple(Dependant(_entry(rows, row[0]), bool(row[1])) for row in found.fetchall())


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
