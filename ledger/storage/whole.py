"""The whole ledger table by table, for an archive."""

import sqlite3
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ledger.units.words import EquipmentKind, in_pieces


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
