"""What was read at the bench, as it counts."""

import sqlite3

from ledger.views.bench.bench import lost_in_the_pot, readings_of

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
