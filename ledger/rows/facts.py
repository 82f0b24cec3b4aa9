"""The whole ledger: as the checks of what must hold look at it, and table by table."""

import sqlite3
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ledger.domain.keep.invariants import DecisionFact, Facts, LotFact, MovementFact
from ledger.rows.dependants import binding, foreign_keys
from ledger.units.words import EquipmentKind, in_pieces


def facts(rows: sqlite3.Connection) -> Facts:
    """Lots, movements and decisions by their codes, and what was taken back."""
    return Facts(
        lots=_lots(rows),
        movements=_movements(rows),
        decisions=tuple(
            DecisionFact(*row)
            for row in rows.execute(
                'SELECT d.entry_id, l.code, d.verdict, d."on" FROM live_decision d '
                "JOIN lot l ON l.id = d.lot_id ORDER BY d.id"
            )
        ),
        reverses=tuple((row[0], row[1]) for row in rows.execute("SELECT id, reverses FROM entry WHERE reverses > 0")),
        hanging=tuple(_hanging(rows)),
        reworks=frozenset(row[0] for row in rows.execute("SELECT code FROM live_batch WHERE process = 'rework'")),
    )


def _lots(rows: sqlite3.Connection) -> tuple[LotFact, ...]:
    found = rows.execute(
        """
        SELECT l.code, l.entry_id, l."on", m.kind, l.supplier_id IS NOT NULL AS supplied, b.code AS batch, l.mass_mg
        FROM live_lot l JOIN material m ON m.id = l.material_id LEFT JOIN batch b ON b.id = l.batch_id
        """
    )
    return tuple(
        LotFact(
            code=row["code"],
            entry=row["entry_id"],
            on=row["on"],
            counted=in_pieces(row["kind"]),
            soap=row["kind"] == "soap",
            supplied=bool(row["supplied"]),
            batch=row["batch"],
            mass_mg=row["mass_mg"],
        )
        for row in found
    )


def _movements(rows: sqlite3.Connection) -> tuple[MovementFact, ...]:
    found = rows.execute(
        """
        SELECT v.entry_id AS entry, l.code AS lot, p.name AS place, p.kind AS place_kind, v."on", v.quantity, v.kind,
               b.code AS batch, c.code AS customer,
               e.reverses IS NULL AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id) AS counts
        FROM movement v JOIN entry e ON e.id = v.entry_id
        JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
        LEFT JOIN batch b ON b.id = v.batch_id LEFT JOIN customer c ON c.id = v.customer_id
        ORDER BY v.id
        """
    )
    return tuple(MovementFact(**{**dict(row), "counts": bool(row["counts"])}) for row in found)


def _hanging(rows: sqlite3.Connection) -> list[tuple[int, str, int]]:
    found = []
    for key in foreign_keys(rows):
        query = (
            f"SELECT DISTINCT t.entry_id, p.entry_id FROM live_{key.table} t "
            f'JOIN {key.parent} p ON p.id = t."{key.column}" JOIN entry r ON r.reverses = p.entry_id '
            f"WHERE {binding(key.table)}"
        )
        found += [(row[0], key.table, row[1]) for row in rows.execute(query)]
    return found


class TableRows(NamedTuple):
    """One table with every row that was ever written into it."""

    name: str
    columns: tuple[str, ...]
    parents: Mapping[str, str]  # the table whose rows a column names by their numbers
    rows: Iterator[sqlite3.Row]


_LIVE = "SELECT substr(name, 6) FROM main.sqlite_schema WHERE type = 'view' AND name LIKE 'live\\_%' ESCAPE '\\'"


def every_table(rows: sqlite3.Connection) -> Iterator[TableRows]:
    """Every table of ours, entries first; the papers' bytes are no table to read."""
    facts = {row[0] for row in rows.execute(_LIVE)}
    for name in ("entry", *sorted({*facts, "personal_text"})):
        columns = tuple(row[1] for row in rows.execute(f"PRAGMA main.table_info({name})"))
        keys = rows.execute(f"PRAGMA main.foreign_key_list({name})").fetchall()
        parents = {key["from"]: key["table"] for key in keys if key["to"] in ("id", None)}
        yield TableRows(name, columns, parents, rows.execute(f"SELECT * FROM main.{name} ORDER BY 1"))


_CODED = ("batch", "customer", "equipment", "lot", "material", "place", "recipe", "supplier")
_NAMED = {
    **{table: f"SELECT id, code FROM {table}" for table in _CODED},
    "recipe_version": "SELECT v.id, r.code || ', version ' || v.number FROM recipe_version v "
    "JOIN recipe r ON r.id = v.recipe_id",
    "plan_line": "SELECT p.id, b.code || ', line ' || p.number FROM plan_line p JOIN batch b ON b.id = p.batch_id",
}


def row_names(rows: sqlite3.Connection) -> dict[str, dict[int, str]]:
    """What a person calls the rows of a table, by their numbers: a code where they have one."""
    return {table: {row[0]: row[1] for row in rows.execute(query)} for table, query in _NAMED.items()}


def in_pieces_here(rows: sqlite3.Connection) -> dict[str, set[int]]:
    """The rows of lots, materials and plan lines whose quantities are pieces, by table."""
    counted = {row[0] for row in rows.execute("SELECT id, kind FROM material") if in_pieces(row[1])}
    return {
        "material_id": counted,
        "lot_id": {row[0] for row in rows.execute("SELECT id, material_id FROM lot") if row[1] in counted},
        "plan_line_id": {row[0] for row in rows.execute("SELECT id, material_id FROM plan_line") if row[1] in counted},
    }


def equipment_kinds(rows: sqlite3.Connection) -> dict[int, EquipmentKind]:
    """Which kind each piece of equipment is of."""
    return {row[0]: row[1] for row in rows.execute("SELECT id, kind FROM equipment")}


def taken_back(rows: sqlite3.Connection) -> dict[int, int]:
    """The entries that were taken back, each with the one that did."""
    return {row[0]: row[1] for row in rows.execute("SELECT reverses, id FROM entry WHERE reverses IS NOT NULL")}
