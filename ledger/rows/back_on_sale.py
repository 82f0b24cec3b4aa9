"""Bars that came back and were put on sale again: what a recall, a trace and a record say of them."""

import json
import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.rows.opened import day
from ledger.units.dates import show_date


@dataclass(frozen=True)
class BackOnSale:
    """Bars of one batch put back on sale on one day; they are counted wherever they are since."""

    batch_code: str
    bars: int
    on: date
    why: str  # who decided, and the reason

    @property
    def words(self) -> str:
        """The same in words."""
        bars = "1 bar" if self.bars == 1 else f"{self.bars} bars"
        return f"{bars} back on sale on {show_date(self.on)}, from the returns shelf ({self.why})"


def back_on_sale(rows: sqlite3.Connection, lot_ids: Sequence[int]) -> tuple[BackOnSale, ...]:
    """Every time bars of some lots went from the returns shelf back on sale, oldest first."""
    found = rows.execute(
        """
        SELECT l.code, -v.quantity AS bars, v."on", v.note FROM live_movement v
        JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
        WHERE p.kind = 'returns' AND v.kind = 'moved' AND v.quantity < 0
          AND v.lot_id IN (SELECT value FROM json_each(?)) ORDER BY v."on", v.id
        """,
        (json.dumps(list(lot_ids)),),
    )
    return tuple(
        BackOnSale(row["code"], row["bars"], day(row["on"]), str(row["note"]).removeprefix("back on sale, "))
        for row in found
    )
