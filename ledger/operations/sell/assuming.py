"""Which other batches the bars of a movement may be of, as it is written beside the movement."""

from collections.abc import Collection, Iterable
from datetime import date

from ledger.storage.transaction import Transaction


def write_assumed(tx: Transaction, moved: Iterable[tuple[int, Collection[int]]]) -> list[int]:
    """Write for each movement the lots its bars may as well be of; returns the movements that were assumed."""
    rows = [{"movement_id": one, "lot_id": lot} for one, may_be in moved for lot in sorted(may_be)]
    tx.add_rows("assumed_batch", rows)
    return list(dict.fromkeys(int(row["movement_id"]) for row in rows))


def write_ticked(tx: Transaction, movements: Iterable[int], *, on: date, by: str) -> None:
    """Write that somebody looked, and that the batch of these movements is as booked."""
    tx.add_rows("assumed_ticked", [{"movement_id": one, "on": on, "by": by} for one in movements])
