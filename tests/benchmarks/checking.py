"""How long and in how much memory a check reads a ledger, beside reading and hashing the same rows bare, in one run.

    python tests/benchmarks/checking.py soap.db

The goal is three times the bare reading, in memory that does not grow with the ledger. The file is only read; an older
one is brought up to date in a copy first. Make a large one with `workshop.py`.
"""

import argparse
import hashlib
import resource
import shutil
import sys
import time
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from ledger.operations.keep.check import check
from ledger.rows.laws import LAWS
from ledger.rows.opened import OlderLedger, Rows, open_rows
from ledger.storage import verify
from ledger.storage.book import Book
from ledger.storage.chain import fact_tables

GOAL = 3.0


def bare(rows: Rows) -> int:
    """Read every row that a check covers, and hash it as Python shows it."""
    digest, count = hashlib.sha256(), 0
    for table in ("entry", *fact_tables(rows)):
        for row in rows.execute(f"SELECT * FROM {table}"):
            digest.update(repr(tuple(row)).encode())
            count += 1
    return count


def timed(name: str, work: Callable[[], object]) -> float:
    """CPU seconds of one piece of work, with the most memory that was used so far."""
    start = time.process_time()
    work()
    took = time.process_time() - start
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (1 << 20 if sys.platform == "darwin" else 1 << 10)
    print(f"{name:45s} {took:8.2f} s {most:8.0f} MiB")
    return took


def main() -> None:
    """Time the whole check beside the bare reading, then each part."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("ledger", type=Path)
    path = asked.parse_args().ledger
    with TemporaryDirectory() as room:
        try:
            rows = open_rows(path)
        except OlderLedger:
            path = Path(shutil.copy(path, room))
            Book(path, who="", now=lambda: datetime.now(UTC)).close()
            rows = open_rows(path)
        print(rows.execute("SELECT count(*) FROM movement").fetchone()[0], "movements")
        least = timed("read and hashed bare", lambda: bare(rows))
        took = timed("check", lambda: check(rows))
        print(f"{took / least:.2f} times; the goal is {GOAL}")
        for part in (verify._file, verify._pointers, verify._chain, verify._contents, verify._people, *LAWS):
            timed(part.__name__, lambda part=part: list(part(rows)))  # type: ignore[misc]
        rows.close()


if __name__ == "__main__":
    main()
