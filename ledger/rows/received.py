"""What came before under the same number."""

import sqlite3

from ledger.units.codes import supplier_number_key


def came_before(rows: sqlite3.Connection, supplier_id: int, material_code: str, number: str) -> tuple[str, ...]:
    """Our codes of the lots of this material that this supplier sent under this number, however it was written."""
    found = rows.execute(
        "SELECT l.code FROM live_lot l JOIN material m ON m.id = l.material_id "
        "WHERE l.supplier_id = ? AND m.code = ? AND l.supplier_number_key = ? ORDER BY l.id",
        (supplier_id, material_code, supplier_number_key(number)),
    )
    return tuple(row["code"] for row in found)
