"""What booking a long delivery from a CSV file costs in CPU time, beside SQLite inserting the same rows raw.

    python tests/benchmarks/delivery.py [LINES] [ROUNDS]

Each round books the file into a copy of a new ledger by the command, then writes the rows that this booked into
another copy with the sqlite3 module alone, in one transaction, with all guards of the file standing; the median of
the ratios is printed. The goal is 10 for 10,000 lines.
"""

import os
import resource
import shutil
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SOAPLEDGER = str(Path(sys.executable).with_name("soapledger"))
START = (
    [
        *("init", "--business", "Benchmark", "--country", "IE", "--currency", "EUR", "--units", "metric"),
        *("--maker", "Orla Penhallow", "--time-zone", "Europe/Dublin", "--labour", "14"),
        *("--market", "eu=Orla Penhallow; Quay Lane, Larkmere"),
    ],
    ["supplier", "add", "Benchmark oils"],
    ["material", "add", "olive oil", "--like", "olive"],
    ["material", "add", "coconut oil", "--like", "coconut"],
)


def soapledger(ledger: Path, *words: str) -> float:
    """CPU seconds of one command; one that fails stops the benchmark."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        [SOAPLEDGER, "--ledger", str(ledger), *words],
        check=True,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": ""},
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def booked(ledger: Path, earlier: Path) -> list[tuple[str, list[tuple[object, ...]]]]:
    """The rows that one ledger has and the earlier one has not, by table, each after those it refers to."""
    rows = sqlite3.connect(ledger)
    before = sqlite3.connect(earlier)
    return [
        (table, rows.execute(f"SELECT * FROM {table} WHERE id > ?", (last or 0,)).fetchall())
        for table in ("delivery", "lot", "movement", "decision", "entry")
        for (last,) in before.execute(f"SELECT max(id) FROM {table}")
    ]


def raw(ledger: Path, written: list[tuple[str, list[tuple[object, ...]]]]) -> float:
    """CPU seconds that SQLite takes to insert these rows in one transaction."""
    rows = sqlite3.connect(ledger, isolation_level=None)
    rows.executescript("PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON; PRAGMA secure_delete = ON;")
    start = time.process_time()
    rows.execute("BEGIN IMMEDIATE")
    rows.execute("PRAGMA defer_foreign_keys = ON")
    for table, lines in written:
        rows.executemany(f"INSERT INTO {table} VALUES ({', '.join('?' * len(lines[0]))})", lines)
    rows.execute("COMMIT")
    return time.process_time() - start


def main(lines: int, rounds: int) -> None:
    """Book, write raw, and print both with their ratio."""
    folder = Path(tempfile.mkdtemp(prefix="soapledger-bench-"))
    try:
        new, ours, theirs, file = (folder / name for name in ("new.db", "ours.db", "theirs.db", "delivery.csv"))
        for words in START:
            soapledger(new, *words)
        names = ("olive oil", "coconut oil")
        text = [f"{names[n % 2]},{5 + n % 7} kg,A{n},{10 + n % 90}.50" for n in range(lines)]
        file.write_text("\n".join(["material,quantity,lot,cost", *text, ""]), encoding="utf-8")
        found = []
        for _ in range(rounds):
            shutil.copy(new, ours)
            shutil.copy(new, theirs)
            spent = soapledger(ours, "receive", "benchmark-oils", "--accept", "--csv", str(file))
            found.append((spent, raw(theirs, booked(ours, new))))
    finally:
        shutil.rmtree(folder)
    ours_s, raw_s = (statistics.median(one[side] for one in found) for side in (0, 1))
    ratio = statistics.median(spent / alone for spent, alone in found)
    print(f"{lines} lines: {ours_s:.2f} s of CPU, raw {raw_s:.3f} s, {ratio:.1f} x (goal 10)")


if __name__ == "__main__":
    given = [int(one) for one in sys.argv[1:]]
    main(*(given + [10_000, 3][len(given) :]))
