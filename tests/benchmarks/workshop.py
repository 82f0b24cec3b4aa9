"""A ledger the size of a workshop's years, for measuring.

    python tests/benchmarks/workshop.py DIR [--years 2 | 8 | 33] [--seed 7] [--force]

About 10 thousand movements for 2 years, 100 thousand for 8, a million for 33, in DIR/soap.db; the same seed gives the
same ledger, byte for byte in every row. Its first turns of four weeks are played through the operations that commands
call; the last of them is then written again and again, four weeks later each time (see stamping.py). That this gives
the very rows that playing on would give, `tests/storage/test_workshop.py` shows. It ends on a Friday in the middle of
work, 20 Nov 2026: cans half full, racks full, one batch planned.
"""

import argparse
import shutil
import sqlite3
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, timedelta
from pathlib import Path
from unittest.mock import patch

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[2]))

from benchmarks.stamping import Marks, Stamp, Turns, marks
from benchmarks.workshop_selling import sell
from benchmarks.workshop_setup import MAKER, Scale, begin
from benchmarks.workshop_stores import TURN
from benchmarks.workshop_weeks import Weeks

from ledger.storage.book import Book

END = date(2026, 11, 20)  # a Friday, the twelfth day of a turn
SCALES = {2: Scale(3, 1, 2), 8: Scale(7, 2, 3), 33: Scale(16, 3, 6)}
PLAYED = 7  # turns, until one is like the one before it in every row
# Reads of today want these; they are dropped before the ledger is handed over.
_WHILE_PLAYING = (
    "movement (plan_line_id)",
    "plan_line (batch_id)",
    "plan_line (lot_id)",
    "lot (batch_id)",
    "lot (material_id)",
    "decision (batch_id)",
    "reading (plan_line_id)",
    "label_approval (lot_id)",
    "finished_check (lot_id)",
    "material_revision (material_id)",
    "supplier_revision (supplier_id)",
)


@contextmanager
def playing(path: Path, scale: Scale, start: date, seed: int) -> Iterator[Weeks]:
    """A new workshop whose ledger stands at `path`, set up; the salts of people's details are of the seed too."""
    moment: list[Weeks] = []
    book = Book.create(path, who=MAKER, now=lambda: moment[0].now())
    weeks = Weeks(book, scale, start, seed)
    moment.append(weeks)
    with patch("ledger.storage.personal.secrets.token_hex", lambda size: weeks.chance.randbytes(size).hex()):
        weeks.chance.seed(seed)
        begin(book, scale, start)
        yield weeks
    book.close()


def marks_of(book: Book) -> Marks:
    """The highest number of each table now."""
    with book.look() as rows:
        return marks(rows)


def indexed(path: Path, *, on: bool) -> None:
    """Lay what the reads of today lack, or take it away again."""
    raw = sqlite3.connect(path, isolation_level=None)
    for number, what in enumerate(_WHILE_PLAYING):
        raw.execute(f"CREATE INDEX while_playing_{number} ON {what}" if on else f"DROP INDEX while_playing_{number}")
    raw.close()


def make(path: Path, scale: Scale, turns: int, *, seed: int) -> None:
    """So many turns of a workshop (more than are played), the last up to END, in a new ledger at `path`."""
    start = END - timedelta(days=(turns - 1) * TURN + 11)
    with playing(path, scale, start, seed) as weeks:
        indexed(path, on=True)
        after = [marks_of(weeks.book)]
        for turn in range(PLAYED):
            weeks.play_turn(sell)
            after.append(marks_of(weeks.book))
            print(f"  turn {turn + 1} played, {after[-1]['movement']} movements", file=sys.stderr)
        indexed(path, on=False)
    raw = sqlite3.connect(path, isolation_level=None)
    raw.execute("PRAGMA synchronous = OFF")  # a file that can be made again
    day = start + timedelta(days=(PLAYED - 1) * TURN + 11)
    until = raw.execute(
        "SELECT max(id) FROM entry WHERE verb = 'batch plan' AND recorded_at LIKE ?", (f"{day}%",)
    ).fetchone()[0]
    Stamp(raw, Turns(tuple(after)), days=TURN, start=start).write(turns - PLAYED, until=until)
    raw.close()


def main() -> None:
    """Make one ledger and say what is in it."""
    parser = argparse.ArgumentParser(description="A ledger the size of a workshop's years.")
    parser.add_argument("folder", type=Path)
    parser.add_argument("--years", type=int, choices=sorted(SCALES), default=2)
    parser.add_argument("--seed", type=int, default=7)
    parser.add_argument("--force", action="store_true", help="write over a ledger that is there")
    asked = parser.parse_args()
    path = asked.folder / "soap.db"
    if path.exists() and not asked.force:
        parser.exit(2, f"{path} is there already; name another folder, or add --force.\n")
    began = time.process_time()
    memory = Path("/dev/shm")  # no disk to wait for at every entry
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as folder:
        beside = Path(folder) / "soap.db"
        make(beside, SCALES[asked.years], round(asked.years * 365.25 / TURN), seed=asked.seed)
        raw = sqlite3.connect(beside)
        counts = [
            raw.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in ("movement", "entry", "batch")
        ]
        raw.close()
        asked.folder.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(beside, path)
    spent = time.process_time() - began
    print(
        f"{path}: {asked.years} years to {END}, seed {asked.seed}; {counts[0]} movements, {counts[1]} entries, "
        f"{counts[2]} batches, {path.stat().st_size / 1e6:.1f} MB; {spent:.0f} s CPU."
    )


if __name__ == "__main__":
    main()
