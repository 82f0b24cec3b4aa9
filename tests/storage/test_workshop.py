"""The generator of ledgers writes what the operations write: every row of every table, and every digest."""

import shutil
import sqlite3
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from benchmarks.stamping import Stamp, Turns
from benchmarks.workshop import PLAYED, marks_of, playing
from benchmarks.workshop_selling import sell
from benchmarks.workshop_setup import Scale
from benchmarks.workshop_stores import TURN

from ledger.operations.keep.check import check
from ledger.operations.stock.lots import count_lot
from ledger.rows.opened import open_rows
from ledger.storage.book import Book

START = date(2027, 5, 31)  # a Monday; the last turn of four weeks begins on 13 Dec and crosses the new year
INSERTED = 'INSERT INTO movement (entry_id, lot_id, place_id, "on", quantity, kind) VALUES (?, ?, ?, ?, ?, ?)'
pytestmark = pytest.mark.slow


def rows_of(path: Path) -> Iterator[tuple[str, tuple[object, ...]]]:
    """Every row of a file, by table and number, and the definition of every table, view, guard and index."""
    raw = sqlite3.connect(path)
    tables = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")]
    for table in tables:
        yield from ((table, row) for row in raw.execute(f"SELECT * FROM {table} ORDER BY rowid"))
    yield from (("schema", row) for row in raw.execute("SELECT type, name, sql FROM sqlite_schema ORDER BY 1, 2"))
    raw.close()


def test_a_turn_written_again_is_the_turn_played_on_row_by_row(tmp_path: Path) -> None:
    played, stamped = tmp_path / "played.db", tmp_path / "stamped.db"
    with playing(played, Scale(3, 1, 2), START, seed=7) as weeks:
        after = [marks_of(weeks.book)]
        for _ in range(PLAYED):
            weeks.play_turn(sell)
            after.append(marks_of(weeks.book))
        shutil.copyfile(played, stamped)
        weeks.play_turn(sell)
        assert weeks.on == START + timedelta(days=TURN * (PLAYED + 1)) > date(2028, 1, 1)
    raw = sqlite3.connect(stamped, isolation_level=None)
    Stamp(raw, Turns(tuple(after)), days=TURN, start=START).write(1)
    raw.close()
    for one, other in zip(rows_of(played), rows_of(stamped), strict=True):
        assert one == other

    # the turn holds what a workshop's four weeks are to hold
    rows = open_rows(stamped)
    last = "entry_id IN (SELECT id FROM entry WHERE id > ?)"
    since = after[-1]["entry"]
    verbs = {row[0] for row in rows.execute("SELECT verb FROM entry WHERE id > ?", (since,))}
    assert verbs >= {
        "receive", "lot combine", "batch plan", "batch log", "batch strain", "batch fill", "batch divide", "batch cut",
        "cure weigh", "pass", "label approve", "label print", "label count", "release", "reject", "rework",
        "stall out", "stall back", "dispatch", "return", "gift", "lot count", "lot waste", "lot accepted",
        "lot on hold", "complaint add", "complaint note", "complaint close", "deviation decide", "equipment check",
        "upkeep add", "attach", "undo",
    }  # fmt: skip
    kinds = {row[0] for row in rows.execute(f"SELECT kind FROM movement WHERE {last}", (since,))}
    assert kinds == {
        "received", "consumed", "yielded", "moved", "sold", "dispatched", "given", "returned", "counted", "wasted",
    }  # fmt: skip
    assert check(rows).findings == ()
    rows.close()

    # and work goes on in it, behind its guards
    book = Book(stamped, who="Elspet", now=weeks.now)
    assert count_lot(book, weeks.drum or "", 0, place=None, on=weeks.on, note=None) < 0
    book.close()
    raw = sqlite3.connect(stamped)
    of = raw.execute("SELECT id FROM lot WHERE code = ?", (weeks.drum,)).fetchone()[0]
    entry = raw.execute("SELECT max(id) + 1 FROM entry").fetchone()[0]
    taken = (entry, of, 1, weeks.on.isoformat(), -1, "wasted")
    with pytest.raises(sqlite3.IntegrityError, match="more than was on hand"):
        raw.execute(
            'INSERT INTO movement (entry_id, lot_id, place_id, "on", quantity, kind) VALUES (?,?,?,?,?,?)', taken
        )
    raw.close()


def test_turns_that_differ_are_not_stamped(tmp_path: Path) -> None:
    path = tmp_path / "young.db"
    with playing(path, Scale(2, 1, 1), START, seed=7) as weeks:
        after = [marks_of(weeks.book)]
        for _ in range(3):
            weeks.play_turn(sell)
            after.append(marks_of(weeks.book))
    raw = sqlite3.connect(path)
    with pytest.raises(ValueError, match="did not write the same rows"):
        Stamp(raw, Turns(tuple(after)), days=TURN, start=START)
    raw.close()
