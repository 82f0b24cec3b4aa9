"""Ledgers that earlier programs wrote, each opened, read, written on and taken back with the program of today.

`formats/NN-COMMIT.sql` is what the program of that commit wrote, as SQL. The same story was typed into each, with what
each could do by then; a format that is new gets a dump of its own before it becomes an old one.
"""

import json
import shutil
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from freezegun import freeze_time
from shop import NOW
from typer.testing import CliRunner

from ledger.cli.main import app
from ledger.fileformat import SCHEMA_VERSION
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.stock.lots import count_lot
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep
from ledger.rows.opened import open_rows
from ledger.storage.book import Book

DUMPS = sorted((Path(__file__).parent / "formats").glob("*.sql"))
FORMAT = {1: 1, 2: 1, 3: 2, 4: 3, 5: 4, 6: 4, 7: 5, 8: 6, 9: 7, 10: 8, 11: 9}  # by dump; 1 and 4 were laid in two ways
WITH_PORTIONS, WITH_ASSESSMENT, WITH_SAMPLES, WITH_REWORK = 3, 4, 5, 6  # the first dump whose program had them
WITH_FIGURES = 6  # the first format that keeps what a recipe says


def digests(path: Path) -> list[str]:
    """The digest of every entry, the first one first."""
    raw = sqlite3.connect(path)
    found = [row[0] for row in raw.execute("SELECT digest FROM entry ORDER BY id")]
    raw.close()
    return found


def version(path: Path) -> int:
    raw = sqlite3.connect(path)
    found: int = raw.execute("PRAGMA user_version").fetchone()[0]
    raw.close()
    return found


def batches_of(number: int) -> list[tuple[str, str, int | None]]:
    """What batch list says: code, status, bars."""
    portions = [("divided", None), ("curing", 6), ("weighed", None)] if number >= WITH_PORTIONS else []
    reworked = [("reworked", None)] if number >= WITH_REWORK else []
    stand = [("released", 10), *portions, ("rejected", 10), *reworked, ("curing", 10), ("planned", None)]
    codes = ("26-001-4", "26-002-2", "26-003-0", "26-004-9", "26-005-7", "26-006-5", "26-007-3", "26-008-1")
    return [(code, *one) for code, one in zip(codes, stand, strict=False)]


def test_every_format_has_a_dump_that_tells_its_number() -> None:
    told = {int(path.name[:2]): int(path.read_text(encoding="utf-8").split("user_version = ")[1][0]) for path in DUMPS}
    assert told == FORMAT
    assert {*FORMAT.values()} == {*range(1, SCHEMA_VERSION + 1)}


@dataclass(frozen=True)
class Dump:
    """The ledger of one dump, and what the command said that brought it up to date."""

    number: int
    folder: Path  # with `soap.db` and, of an earlier format, the copy that was made
    before: list[str]  # the digests of its entries as it was
    said: str


@pytest.fixture(scope="module", params=DUMPS, ids=lambda path: path.stem)
def dump(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Dump:
    """One dump, brought up to date once for all that is asked of it."""
    folder = tmp_path_factory.mktemp(request.param.stem)
    raw = sqlite3.connect(folder / "soap.db")
    raw.executescript(request.param.read_text(encoding="utf-8"))
    raw.close()
    before = digests(folder / "soap.db")
    with freeze_time(NOW):
        done = CliRunner().invoke(app, ["--ledger", str(folder / "soap.db"), "stock"])
    assert done.exit_code == 0, done.output
    return Dump(int(request.param.name[:2]), folder, before, done.stderr)


@pytest.fixture
def number(dump: Dump, monkeypatch: pytest.MonkeyPatch) -> int:
    """Its number; what is only read is read where it lies."""
    monkeypatch.setenv("SOAPLEDGER", str(dump.folder / "soap.db"))
    return dump.number


@pytest.fixture
def copied(dump: Dump, tmp_path: Path) -> Path:
    """The ledger and what lies beside it, in the file that commands find by themselves."""
    for one in dump.folder.iterdir():
        shutil.copyfile(one, tmp_path / one.name)
    return tmp_path / "soap.db"


@pytest.fixture
def shown(run: Any) -> Any:
    """What a command answers as JSON."""
    return lambda *words: json.loads(run(*words, "--json").stdout)


@pytest.mark.usefixtures("frozen")
def test_it_is_brought_up_to_date_once_after_a_copy_and_no_entry_differs(dump: Dump, copied: Path, run: Any) -> None:
    number, before, copy = dump.number, dump.before, copied.with_name(f"soap-format-{FORMAT[dump.number]}.db")
    older, lacks_rows = FORMAT[number] < SCHEMA_VERSION, FORMAT[number] < WITH_FIGURES
    assert (copy.name in dump.said, copy.exists()) == (older, older)
    assert run("stock").stderr == ""
    assert version(copied) == SCHEMA_VERSION
    after = digests(copied)
    assert after[: len(before)] == before
    assert len(after) == len(before) + lacks_rows  # one entry keeps what the earlier program did not
    assert f"{len(after)} entries checked; nothing is wrong." in run("check").stdout
    if older:
        assert (version(copy), digests(copy)) == (FORMAT[number], before)


@pytest.mark.usefixtures("frozen")
def test_its_stock_and_batches_are_those_of_the_story(number: int, run: Any, shown: Any) -> None:
    soap = 2 if number < WITH_PORTIONS else 3  # batches of 700 g olive oil beside the one that was rejected
    stock = {lot["lot"]["code"]: lot["lot"] for line in shown("stock") for lot in line["lots"]}
    assert stock["L1-X"]["on_hand"] == 5_000_000 - (soap + 1) * 700_000
    assert (stock["L7-9"]["on_hand"], stock["L7-9"]["status"]) == (2_000_000, "on hold")
    assert stock["L5-2"]["on_hand"] == 100 - 9  # a band for each bar that was passed
    assert stock["26-001-4"]["on_hand"] == 10 - 1 - 3 - (2 + 1)  # cracked, sold, dispatched
    made = [(one["batch"]["code"], one["status"], one["batch"]["made"]) for one in shown("batch", "list")]
    for found, (code, status, bars) in zip(made, batches_of(number), strict=True):
        assert found[:2] == (code, status)
        assert bars in (None, found[2])
    record = run("batch", "show", "26-001-4").stdout
    # 32.50 EUR and its share of 6.50 carriage over 80.50 of goods is 35.12 for 5 kg: 4.92 for 700 g
    assert "4.92 EUR" in run("cost", "26-001-4").stdout
    assert "Batch 26-001-4, Morning Lavender: released." in record
    assert "superfat     5.0 % meant, 5.00 % as weighed" in record
    assert "cracked along the top" in record
    assert "morning, version 2" in run("batch", "show", batches_of(number)[-1][0]).stdout


@pytest.mark.usefixtures("frozen")
def test_its_recall_says_where_every_bar_is(number: int, run: Any, shown: Any) -> None:
    portion = 0 if number < WITH_PORTIONS else 6
    reworked = 0 if number < WITH_REWORK else 10
    found = shown("recall", "lot", "L1-X")
    assert {name: bars for name, bars in found["totals"].items() if bars} == {
        "made": 10 + 10 + 10 + portion,
        "on_hand": 2 + 10 + portion,
        "retained": 1,
        "sold": 3,
        "dispatched": 2 + 1,
        "wasted": 1 + (10 - reworked),
        **({"reworked": reworked} if reworked else {}),
    }
    assert [(one["name"], one["phone"], one["bars"]) for one in found["call"]] == [
        ("no name kept (complaint 1)", None, 0),  # who complained, first
        ("Harrow and Fenn", "+353 20 910 0188", 2),
        ("c-1", None, 1),  # erased
    ]
    assert "certificate.txt" in run("lot", "show", "L1-X").stdout


@pytest.mark.usefixtures("frozen")
def test_its_rack_and_its_label_are_read_today(number: int, run: Any, shown: Any) -> None:
    label = run("label", "check", "26-001-4", "--market", "eu").stdout
    # 700 g, 300 g, 2 parts water to 1 of lye, 10 g of lavender
    assert "OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM" in label
    assert "net quantity: 100 g" in label
    assert "Its bars are released." in label
    assert ("QR-114 of R. Lund" in label) == (number >= WITH_ASSESSMENT)
    # cut on 24 March, 28 days; on 1 June 9 days of April, 31 of May and 1 more have gone
    last = next(code for code, status, _ in reversed(batches_of(number)) if status == "curing")
    assert f"{last}  Morning Lavender    10  21 Apr 2026  ready for 41 days" in run("cure", "list").stdout
    assert len(shown("samples")) == (number >= WITH_SAMPLES)


@pytest.mark.usefixtures("frozen")
def test_it_is_written_on_and_a_person_is_erased_and_what_it_proved_it_still_proves(
    dump: Dump, copied: Path, run: Any
) -> None:
    """The bars were released though an assessment did not cover them; without one, none was asked for then."""
    number, path, before = dump.number, copied, digests(copied)
    if number < WITH_ASSESSMENT:
        assert "no safety assessment" in run("dispatch", "harrow", "26-001-4=1", code=1).stderr
        run("gift", "26-001-4=1", code=1)
    else:
        run("dispatch", "harrow", "26-001-4=1")
        run("undo", "--yes")
    book = Book(path, who="Nuala", now=lambda: NOW)
    count_lot(book, "L1-X", 1_900_000, place=None, on=NOW.date(), note=None)
    with closing(open_rows(path)) as rows:
        assert check(rows).findings == ()
    undo(book, len(digests(path)))
    add_upkeep(book, UpkeepNote("cleaning", "the shelf, with Harrow and Fenn", NOW.date(), "Nuala"))
    book.close()
    left = "2 900 g" if number < WITH_PORTIONS else "2 200 g"  # of 5 kg, three batches or four of 700 g
    shown = run("lot", "show", "L1-X").stdout.replace("\N{NO-BREAK SPACE}", " ")
    assert f"olive oil, lot L1-X: {left} on hand" in shown
    said = run("customer", "erase", "harrow", "--reason", "it is the name of two people", "--yes", "--name-too").stdout
    assert (f"soap-format-{FORMAT[number]}.db" in said) == (FORMAT[number] < SCHEMA_VERSION)
    assert "nothing is wrong" in run("check").stdout
    assert digests(path)[: len(before)] == before
    for word in (b"Harrow", b"harrow", b"910 0188"):
        assert word not in path.read_bytes()
    assert "[erased, entry" in run("recall", "lot", "L1-X").stdout
    run("undo", "--yes", code=1)
