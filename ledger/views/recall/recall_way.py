"""The whole way from what a recall asks about to one batch, step by step."""

from datetime import date
from itertools import groupby
from typing import NamedTuple

from ledger.errors import Refused
from ledger.rows.batch import BatchRow, batches_by_id
from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.views.recall.reach import Starts, reach


class WayStep(NamedTuple):
    """One lot or batch on the way."""

    code: str
    what: str
    on: date  # received, or made


def way_to(rows: Rows, starts: Starts, batch: BatchRow) -> tuple[WayStep, ...]:
    """The shortest way to a batch, the start and the batch itself among it; bars have the code of their batch.

    Raises Refused for a batch that is not reached.
    """
    found = reach(rows, starts)
    if ("batch", batch.id) not in found.closure.paths:
        raise Refused(f"Batch {batch.code} ({batch.product}) is not reached; nothing of it went in at any depth.")
    way = found.closure.paths["batch", batch.id]
    lots = lots_by_id(rows, [number for kind, number in way if kind == "lot"])
    made = batches_by_id(rows, [number for kind, number in way if kind == "batch"])
    steps = [
        WayStep(lots[number].code, lots[number].material, lots[number].on)
        if kind == "lot"
        else WayStep(made[number].code, made[number].product, made[number].on)
        for kind, number in way
    ]
    return tuple(next(same) for _, same in groupby(steps, key=lambda step: step.code))
