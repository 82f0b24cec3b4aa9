"""Codes: read as typed, where after a slip those that are here and near it are named; and how many were given."""

import json
import sqlite3
from collections.abc import Callable
from datetime import date

from ledger.domain.stock.usual import Came
from ledger.errors import Refused
from ledger.units.codes import keys_kept, near_codes, same_number

_NAMED = 5  # so that the line stays one line
_HERE = "SELECT 1 FROM batch WHERE code = :code UNION ALL SELECT 1 FROM lot WHERE code = :code"


def read_code(rows: sqlite3.Connection, text: str, read: Callable[[str], str]) -> str:
    """A code read by `read_batch_code` or `read_lot_code`; a mistyped one is refused with those near it.

    One that stands here just as it was typed is right, and its check character need not be worked out.
    """
    if rows.execute(_HERE, {"code": text}).fetchone():
        return text
    try:
        return read(text)
    except Refused as error:
        raise Refused(f"{error}{near_words(rows, text)}") from None


def near_words(rows: sqlite3.Connection, text: str) -> str:
    """The codes of batches and lots that one slip would turn into this one, in words; empty where there is none."""
    known = [row[0] for row in rows.execute("SELECT code FROM live_batch UNION SELECT code FROM live_lot ORDER BY 1")]
    close = near_codes(text, known)[:_NAMED]
    return f" Near it here: {', '.join(close)}." if close else ""


def lot_codes_given(rows: sqlite3.Connection) -> int:
    """How many lot codes were given so far, undone or not; the codes of batches that their bars carry are none."""
    last = rows.execute("SELECT code FROM lot WHERE code LIKE 'L%' ORDER BY id DESC LIMIT 1").fetchone()
    return int(last["code"][1:].partition("-")[0]) if last else 0


def batch_codes_given(rows: sqlite3.Connection, year: int) -> int:
    """How many batch codes of a year were given so far, undone or not."""
    found = rows.execute("SELECT count(*) FROM batch WHERE code LIKE ?", (f"{year % 100:02d}-%",))
    return int(found.fetchone()[0])


KEYS = "(SELECT value FROM json_each(:keys))"  # those of `keys_kept`


def came_ever(rows: sqlite3.Connection, material_id: int) -> list[Came]:
    """Every lot of a material that a supplier sent, as much as came and what it cost with the carriage."""
    found = rows.execute(
        "SELECT sum(v.quantity), l.cost_minor FROM live_lot l JOIN live_movement v ON v.lot_id = l.id "
        "AND v.kind = 'received' WHERE l.material_id = ? AND l.supplier_id IS NOT NULL GROUP BY l.id ORDER BY l.id",
        (material_id,),
    )
    return [Came(*row) for row in found]


def came_alike(
    rows: sqlite3.Connection, supplier_id: int, material_code: str, on: date, quantity: int
) -> tuple[str, ...]:
    """Our codes of the lots without a number that came from there that day, as much of the same material."""
    found = rows.execute(
        "SELECT l.code FROM live_lot l JOIN material m ON m.id = l.material_id WHERE l.supplier_id = ? AND m.code = ? "
        'AND l."on" = ? AND l.supplier_number IS NULL AND (SELECT v.quantity FROM live_movement v '
        "WHERE v.lot_id = l.id ORDER BY v.id LIMIT 1) = ? ORDER BY l.id",
        (supplier_id, material_code, on.isoformat(), quantity),
    )
    return tuple(row["code"] for row in found)


def came_before(rows: sqlite3.Connection, supplier_id: int, material_code: str, number: str) -> tuple[str, ...]:
    """Our codes of the lots of this material that this supplier sent under this number, however it was written."""
    found = rows.execute(
        "SELECT l.code, l.supplier_number FROM live_lot l JOIN material m ON m.id = l.material_id "
        f"WHERE l.supplier_id = :supplier AND m.code = :material AND l.supplier_number_key IN {KEYS} ORDER BY l.id",
        {"supplier": supplier_id, "material": material_code, "keys": json.dumps(keys_kept(number))},
    )
    return tuple(row["code"] for row in found if same_number(row["supplier_number"], number))
