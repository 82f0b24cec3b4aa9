"""The retained samples: where they are, and until when they are kept."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.rows.opened import day


@dataclass(frozen=True)
class Sample:
    """Bars of one batch set aside."""

    batch_code: str
    product: str
    bars: int
    on: date
    kept_at: str
    keep_until: date


def samples(rows: sqlite3.Connection, *, lot_id: int | None = None) -> tuple[Sample, ...]:
    """Every retained sample, or those of one lot of bars, the first to be given up first."""
    found = rows.execute(
        """
        SELECT l.code AS batch_code, mr.name AS product, s.bars, s."on", s.kept_at, s.keep_until
        FROM live_retained_sample s JOIN lot l ON l.id = s.lot_id JOIN live_material_revision mr
          ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
        WHERE :lot IS NULL OR s.lot_id = :lot ORDER BY s.keep_until, s.id
        """,
        {"lot": lot_id},
    )
    return tuple(Sample(**{**dict(row), "on": day(row["on"]), "keep_until": day(row["keep_until"])}) for row in found)
