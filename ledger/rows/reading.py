"""What was read at the bench, as it counts."""

import json
import sqlite3
from collections.abc import Collection, Iterable

from ledger.rows.batch import BatchRow
from ledger.rows.opened import day

_CURRENT = """
    SELECT r.* FROM json_each(?) w CROSS JOIN live_reading r ON r.batch_id = w.value WHERE r.plan_line_id IS NULL
    AND NOT EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id) ORDER BY r.id
"""


def current_readings(rows: sqlite3.Connection, batch_id: int) -> list[sqlite3.Row]:
    """The readings that count, in the order they were booked; lines left out are none."""
    return readings_of(rows, [batch_id])[batch_id]


def cooked_off(rows: sqlite3.Connection, batch_id: int) -> int | None:
    """What the pot lost between its two weighings, in mg; None where it was not weighed both times."""
    return lost_in_the_pot(current_readings(rows, batch_id))


def readings_of(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, list[sqlite3.Row]]:
    """Likewise of several batches, by the batch, in one statement."""
    found: dict[int, list[sqlite3.Row]] = {batch: [] for batch in batches}
    for row in rows.execute(_CURRENT, (json.dumps(list(found)),)):
        found[row["batch_id"]].append(row)
    return found


def read_of_the_bars(rows: sqlite3.Connection, batch: BatchRow, what: str) -> list[sqlite3.Row]:
    """The readings of one kind that were taken of the bars and not of the dough, by their days.

    They are of the day of the cut or later, and were booked after the cut: on the day of the cut itself the order of
    the entries decides. A correction stands where the first of the readings it corrects was booked.
    """
    cut = rows.execute("SELECT entry_id FROM live_lot WHERE id = ?", (batch.yield_lot_id,)).fetchone()
    if cut is None or batch.yielded_on is None:
        return []
    every = {row["id"]: row for row in rows.execute("SELECT * FROM live_reading WHERE batch_id = ?", (batch.id,))}
    found = []
    for one in current_readings(rows, batch.id):
        first = one
        while first["corrects"] in every:
            first = every[first["corrects"]]
        if one["what"] == what and day(one["on"]) >= batch.yielded_on and first["entry_id"] > cut["entry_id"]:
            found.append(one)
    return sorted(found, key=lambda one: (one["on"], one["id"]))


def mass_in(rows: sqlite3.Connection, batch_id: int) -> int:
    """Everything weighed into a batch, in mg; packaging and bars are counted, not weighed."""
    return masses_in(rows, [batch_id])[batch_id]


def masses_in(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, int]:
    """Likewise into several batches, by the batch, in one statement."""
    found = rows.execute(
        "SELECT v.batch_id, -sum(v.quantity) FROM json_each(?) w CROSS JOIN movement v ON v.batch_id = w.value "
        "JOIN lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id "
        "WHERE v.kind = 'consumed' AND m.kind NOT IN ('packaging', 'soap') GROUP BY v.batch_id",
        (json.dumps(list(batches)),),
    )
    return dict.fromkeys(batches, 0) | {row[0]: row[1] for row in found}


def lost_in_the_pot(readings: Iterable[sqlite3.Row]) -> int | None:
    """Likewise by the readings that count."""
    read = {one["what"]: one["value"] for one in readings}
    before, after = read.get("pot before cook"), read.get("pot after cook")
    return before - after if before is not None and after is not None else None
