"""The cure rack: what is ready, what still has days to go."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.domain.curing import cure
from ledger.views.batch import batches
from ledger.views.lots import lot_by_id


@dataclass(frozen=True)
class OnTheRack:
    """One batch that was cut and not yet passed for packing."""

    batch_code: str
    product: str
    process: str
    cut_on: date
    ready_on: date
    usable_from: date | None
    days_left: int  # below zero: ready for so many days
    bars: int
    status: str


def cure_list(rows: sqlite3.Connection, *, on: date) -> tuple[OnTheRack, ...]:
    """Every batch on the rack on a date, the first ready first."""
    found = []
    for batch in batches(rows):
        if not batch.soap or batch.yield_lot_id is None or batch.yielded_on is None or batch.yielded_on > on:
            continue
        lot = lot_by_id(rows, batch.yield_lot_id, on=on)
        if lot.status not in ("curing", "on hold") or not lot.on_hand:
            continue
        if lot.status == "on hold" and _was_passed(rows, lot.id, on):
            continue
        assert batch.cure_days is not None
        days = cure(cut_on=batch.yielded_on, days=batch.cure_days, usable_from_days=batch.usable_from_days, today=on)
        found.append(
            OnTheRack(
                batch_code=batch.code,
                product=batch.product,
                process=batch.process,
                cut_on=batch.yielded_on,
                ready_on=days.ready_on,
                usable_from=days.usable_from,
                days_left=days.days_left,
                bars=lot.on_hand,
                status=lot.status,
            )
        )
    return tuple(sorted(found, key=lambda one: (one.ready_on, one.batch_code)))


def _was_passed(rows: sqlite3.Connection, lot_id: int, on: date) -> bool:
    row = rows.execute(
        "SELECT 1 FROM live_decision WHERE lot_id = ? AND verdict = 'passed' AND \"on\" <= ?",
        (lot_id, on.isoformat()),
    ).fetchone()
    return row is not None
