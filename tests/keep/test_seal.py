"""A seal kept on paper proves that a ledger holds what it held, also where all of it was made anew to fit."""

import hashlib
import json
import sqlite3
from pathlib import Path
from typing import Any

import pytest

from ledger.operations.keep.check import check
from ledger.rows.opened import open_rows
from ledger.units.seals import seal_of

pytestmark = pytest.mark.usefixtures("frozen")


def forge(path: Path) -> None:
    """Change a milligram of the last entry that moved something, then make every digest after it fit."""
    raw = sqlite3.connect(path, isolation_level=None)
    raw.row_factory = sqlite3.Row
    guards = raw.execute("SELECT * FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid").fetchall()
    raw.execute("PRAGMA writable_schema = ON")  # all at once: after each DROP TRIGGER the whole schema is read anew
    raw.execute("DELETE FROM sqlite_schema WHERE type = 'trigger'")
    raw.execute("PRAGMA writable_schema = RESET")
    raw.execute("UPDATE movement SET quantity = quantity + 1000 WHERE entry_id = 8 AND lot_id = 1")
    previous = raw.execute("SELECT digest FROM entry WHERE id = 7").fetchone()[0]
    tables = sorted(
        row[0]
        for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table' AND sql LIKE '%entry_id%'")
        if row[0] != "entry"
    )
    for entry in raw.execute("SELECT * FROM entry WHERE id >= 8 ORDER BY id").fetchall():
        head = [1, *(entry[name] for name in ("id", "recorded_at", "who", "verb", "said", "reverses", "program"))]
        lines = [json.dumps([*head, previous], ensure_ascii=False)]
        for table in tables:
            for row in raw.execute(f"SELECT * FROM {table} WHERE entry_id = ? ORDER BY id", (entry["id"],)):
                known = {name: row[name] for name in sorted(row.keys()) if row[name] is not None}
                lines.append(f"{table} {json.dumps(known, ensure_ascii=False, separators=(',', ':'))}")
        lines += [f"marks {entry['marks']}"] if entry["marks"] else []
        digest = hashlib.sha256("\n".join(lines).encode()).hexdigest()
        raw.execute("UPDATE entry SET previous = ?, digest = ? WHERE id = ?", (previous, digest, entry["id"]))
        previous = digest
    raw.execute("PRAGMA writable_schema = ON")
    raw.executemany("INSERT INTO sqlite_schema VALUES (?, ?, ?, ?, ?)", guards)
    raw.close()


def test_the_seal_is_printed_with_what_to_do_with_it(shop: Any, run: Any) -> None:
    digest = shop.rows().execute("SELECT digest FROM entry WHERE id = 14").fetchone()[0]
    seal = seal_of(14, digest).text
    said = run("seal").stdout
    assert said.startswith(f"{seal}\nIt stands for all up to entry 14, written 1 Jun 2026 10:30.\n")
    assert f"soapledger check --seal {seal}\n" in said
    assert json.loads(run("seal", "--json").stdout) == {
        "seal": seal,
        "entry": 14,
        "recorded_at": "2026-06-01T09:30:00Z",
    }
    assert f"elsewhere: {seal}\n" in run("check").stdout


@pytest.mark.usefixtures("shop")
def test_a_later_ledger_still_holds_what_was_sealed(run: Any) -> None:
    seal = run("seal").stdout.splitlines()[0]
    assert "All up to entry 14 stands as it was sealed; 0 entries since." in run("check", "--seal", seal).stdout
    run("stall", "add", "Quay")
    said = run("check", "--seal", seal.lower().replace("-", "")).stdout
    assert said == "15 entries checked; nothing is wrong.\nAll up to entry 14 stands as it was sealed; 1 entry since.\n"


def test_a_ledger_made_anew_as_a_whole_passes_its_check_and_not_the_seal(shop: Any, run: Any) -> None:
    seal = run("seal").stdout.splitlines()[0]
    shop.book.close()
    forge(shop.book.path)
    assert check(open_rows(shop.book.path)).findings == ()
    told = run("check", "--seal", seal, code=1).stderr
    assert told.startswith(f"The seal {seal} is typed rightly and not held here: entry 14 has another seal here")
    answer = json.loads(run("check", "--seal", seal, "--json", code=1).stdout)
    assert (answer["sealed"], answer["findings"]) == ({"seal": seal, "held": False}, [])


@pytest.mark.usefixtures("shop")
def test_the_entries_cut_off_an_end_are_missed_by_the_seal(run: Any) -> None:
    run("backup", "early.db")
    run("stall", "add", "Quay")
    seal = run("seal").stdout.splitlines()[0]
    assert "ends at entry 14" in run("--ledger", "early.db", "check", "--seal", seal, code=1).stderr


@pytest.mark.usefixtures("shop")
def test_a_mistyped_seal_is_told_apart_from_one_that_is_not_held(run: Any) -> None:
    seal = run("seal").stdout.splitlines()[0]
    slip = seal[:-1] + ("2" if seal[-1] != "2" else "3")
    assert run("check", "--seal", slip, code=2).stderr == (
        f"'{slip}' is mistyped: its last sign does not fit the rest. Read it again.\n"
    )
    other = seal_of(14, "0" * 64).text
    assert "is typed rightly and not held here" in run("check", "--seal", other, code=1).stderr


def test_a_record_carries_the_seal_of_the_entry_it_was_printed_from(shop: Any, run: Any, read: Any) -> None:
    seal = run("seal").stdout.splitlines()[0]
    run("batch", "show", shop.batch, "-o", "record.pdf")
    drawn = read(Path("record.pdf").read_bytes())
    for page in range(len(drawn.pages)):
        assert f"seal {seal}" in drawn.text(page)
    signs = seal.partition(":")[2]
    assert drawn.text(0).count(signs[:5]) == 2  # under the code as well
    earlier = json.loads(run("batch", "show", shop.batch, "--as-of", "12", "--json").stdout)["printed_from"]["seal"]
    assert earlier.startswith("12:")
    assert "All up to entry 12 stands" in run("check", "--seal", earlier).stdout
