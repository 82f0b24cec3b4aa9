"""CPU time of the answer to a recall, or of a trace, beside the bare closure in SQL and a read of the rows it reaches.

    python tests/benchmarks/recalling.py FILE CODE [CODE ...]

Medians of seven, taken in turn in one process, so that a slower minute touches both alike. CODE is a lot's own code,
for a recall and a trace on to the bars, or a batch's, for a recall of its bars and a trace back.
"""

import json
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

from ledger.rows.batch import find_batch
from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows, hold_still, open_rows
from ledger.units.codes import looks_like_batch_code
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.trace import trace

_STILL = "(SELECT sum(quantity) FROM movement WHERE lot_id = v.lot_id AND kind = 'consumed' AND batch_id = v.batch_id)"
DOWN = f"""
WITH RECURSIVE node (lot) AS (SELECT value FROM json_each(?) UNION
  SELECT y.lot_id FROM node r CROSS JOIN movement v ON v.lot_id = r.lot AND v.kind = 'consumed'
  CROSS JOIN movement y ON y.batch_id = v.batch_id AND y.kind = 'yielded' WHERE {_STILL} <> 0)
SELECT lot FROM node
"""
UP = f"""
WITH RECURSIVE node (lot) AS (SELECT value FROM json_each(?) UNION
  SELECT v.lot_id FROM node r CROSS JOIN lot l ON l.id = r.lot
  CROSS JOIN movement v ON v.batch_id = l.batch_id AND v.kind = 'consumed' WHERE {_STILL} <> 0)
SELECT lot FROM node
"""
ROUNDS = 7


def bare(rows: Rows, closure: str, lots: list[int]) -> None:
    """The closure, and every row of what it reaches: lots, their movements, decisions and batches."""
    reached = (json.dumps([row[0] for row in rows.execute(closure, (json.dumps(lots),))]),)
    for table, key in (("lot", "id"), ("movement", "lot_id"), ("decision", "lot_id")):
        rows.execute(f"SELECT t.* FROM json_each(?) w CROSS JOIN {table} t ON t.{key} = w.value", reached).fetchall()
    query = (
        "SELECT t.* FROM (SELECT DISTINCT v.batch_id AS id FROM json_each(?) w CROSS JOIN movement v "
        "ON v.lot_id = w.value WHERE v.batch_id IS NOT NULL) b CROSS JOIN batch t ON t.id = b.id"
    )
    batches = [row[0] for row in rows.execute(query, reached)]
    for table in ("movement", "plan_line", "reading"):
        query = f"SELECT t.* FROM json_each(?) w CROSS JOIN {table} t ON t.batch_id = w.value"
        rows.execute(query, (json.dumps(batches),)).fetchall()


def spent(what: Callable[[], object]) -> float:
    """CPU seconds of one run."""
    began = time.process_time()
    what()
    return time.process_time() - began


def side_by_side(least: Callable[[], object], view: Callable[[], object]) -> str:
    """Both in words."""
    times: tuple[list[float], list[float]] = ([], [])
    for _ in range(ROUNDS):
        for one, what in zip(times, (least, view), strict=True):
            one.append(spent(what))
    bare_, found = (statistics.median(one) * 1000 for one in times)
    return f"bare {bare_:.1f} ms, view {found:.1f} ms, {found / bare_:.1f} times"


def measured(rows: Rows, code: str) -> str:
    """The recall and the trace of one lot or batch, each beside its bare closure."""
    if looks_like_batch_code(code):
        batch = find_batch(rows, code)
        lots, named, bars_of, way = [batch.yield_lot_id or 0], [], [batch], UP
    else:
        lot = find_lot(rows, code)
        lots, named, bars_of, way = [lot.id], [lot], [], DOWN
    answer = recall_answer(rows, named, bars_of=bars_of, asked=[code], program="")
    steps = len(trace(rows, code, forward=way == DOWN).steps)
    recall = side_by_side(
        lambda: bare(rows, DOWN, lots), lambda: recall_answer(rows, named, bars_of=bars_of, asked=[], program="")
    )
    traced = side_by_side(lambda: bare(rows, way, lots), lambda: trace(rows, code, forward=way == DOWN))
    return (
        f"{code}: recall, {len(answer.batches)} batches, {answer.totals.made} bars: {recall}; "
        f"trace, {steps} steps: {traced}."
    )


def main() -> None:
    """One line for each code."""
    rows = open_rows(Path(sys.argv[1]))
    hold_still(rows)
    for code in sys.argv[2:]:
        print(measured(rows, code), flush=True)


if __name__ == "__main__":
    main()
