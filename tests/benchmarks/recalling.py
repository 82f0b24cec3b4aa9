"""CPU time of the answer to a recall beside the bare closure in SQL and a read of the rows it reaches.

    python tests/benchmarks/recalling.py FILE CODE [CODE ...]

Medians of seven, taken in turn in one process, so that a slower minute touches both alike. CODE is a lot's own code.
"""

import json
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows, hold_still, open_rows
from ledger.views.recall.recall_answer import recall_answer

BARE = """
WITH RECURSIVE node (lot) AS (SELECT value FROM json_each(?) UNION
  SELECT y.lot_id FROM node r CROSS JOIN movement v ON v.lot_id = r.lot AND v.kind = 'consumed'
  CROSS JOIN movement y ON y.batch_id = v.batch_id AND y.kind = 'yielded'
  WHERE (SELECT sum(quantity) FROM movement WHERE lot_id = r.lot AND kind = 'consumed' AND batch_id = v.batch_id) <> 0)
SELECT lot FROM node
"""
ROUNDS = 7


def bare(rows: Rows, lot: int) -> None:
    """The closure, and every row of what it reaches: lots, their movements, decisions and batches."""
    reached = (json.dumps([row[0] for row in rows.execute(BARE, (json.dumps([lot]),))]),)
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


def main() -> None:
    """One line for each lot."""
    rows = open_rows(Path(sys.argv[1]))
    hold_still(rows)
    for code in sys.argv[2:]:
        lot = find_lot(rows, code)
        answer = recall_answer(rows, [lot], asked=[code], program="")
        times: dict[str, list[float]] = {"bare": [], "view": []}
        for _ in range(ROUNDS):
            times["bare"].append(spent(lambda lot=lot: bare(rows, lot.id)))  # type: ignore[misc]
            times["view"].append(spent(lambda lot=lot: recall_answer(rows, [lot], asked=[], program="")))  # type: ignore[misc]
        least, view = (statistics.median(times[name]) for name in ("bare", "view"))
        print(
            f"{code}: {len(answer.batches)} batches, {answer.totals.made} bars; bare {least * 1000:.1f} ms, "
            f"view {view * 1000:.1f} ms, {view / least:.1f} times."
        )


if __name__ == "__main__":
    main()
