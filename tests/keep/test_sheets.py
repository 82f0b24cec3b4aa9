"""The sheets of an archive are read by a person in a spreadsheet: units, codes, and nothing that is run."""

import csv
import sqlite3
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ledger.documents.keep.sheets import write_sheets
from ledger.documents.kit.csv_cells import plain_text
from ledger.operations.keep.undo import undo
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.stock.lots import waste_lot
from ledger.rows.opened import open_rows
from ledger.storage.personal import PersonDetails
from ledger.views.keep.sheets import sheets


def read(path: Path) -> list[dict[str, str]]:
    """One sheet, by the heads of its columns."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


@pytest.fixture
def written(full: Any, built: Any) -> Path:
    """The sheets of the full shop, which are only read."""

    def write(book: Any) -> Path:
        rows = open_rows(book.path)
        write_sheets(sheets(rows), book.path.with_name("sheets"))
        rows.close()
        return Path(book.path.with_name("sheets"))

    return Path(built("sheets of the full shop", write, full.book.path)[1])


def test_every_table_is_a_sheet_with_every_row(full: Any, written: Path) -> None:
    raw = sqlite3.connect(full.book.path)
    tables = {row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
    assert {path.stem for path in written.iterdir()} == tables - {"attached_content"}  # papers are files
    for path in written.iterdir():
        assert len(read(path)) == raw.execute(f"SELECT count(*) FROM {path.stem}").fetchone()[0]


def test_heads_are_words_with_units_and_no_row_number_is_shown(written: Path) -> None:
    for path in written.iterdir():
        heads = path.read_text(encoding="utf-8-sig").splitlines()[0]
        assert "_" not in heads
        assert '"id"' not in heads
        assert " id" not in heads
        assert not any(f'{stored}"' in heads for stored in (" mg", " minor", " ppm"))


def test_masses_are_grams_and_things_are_named_by_their_codes(full: Any, written: Path) -> None:
    first = read(written / "movement.csv")[0]
    assert (first["lot"], first["kind"], first["quantity, g"], first["quantity, pieces"]) == (
        *(full.olive, "received"),
        *("5000.000", ""),
    )
    bars = [row for row in read(written / "movement.csv") if row["lot"] == full.batch]
    assert {row["quantity, g"] for row in bars} == {""}
    assert {row["on"] for row in bars} <= {f"2026-{month:02d}-{day:02d}" for month in range(1, 7) for day in range(32)}
    lot = read(written / "lot.csv")[0]
    assert (lot["code"], lot["supplier number"], lot["material"]) == (full.olive, "4471/2", "olive-oil")
    (cut,) = (row for row in read(written / "lot.csv") if row["code"] == full.batch)
    assert cut["mass, g"] == "1320.000"  # 1.32 kg at the cut
    line = read(written / "plan_line.csv")[0]
    assert (line["batch"], line["target, g"]) == (full.batch, "600.000")  # 60 % of 1000 g
    assert read(written / "settings_revision.csv")[0]["labour per hour, EUR"] == "15.00"  # 1500 cents in the shop


def test_what_was_taken_back_says_by_which_entry(full: Any, tmp_path: Path) -> None:
    last = full.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    waste_lot(full.book, full.olive, 1_000, place=None, on=date(2026, 6, 1), reason="spilt")
    undo(full.book, last + 1)
    write_sheets(sheets(full.rows()), tmp_path / "sheets")
    spilt = [row for row in read(tmp_path / "sheets" / "movement.csv") if row["entry"] == str(last + 1)]
    assert [(row["quantity, g"], row["taken back by entry"]) for row in spilt] == [("-1.000", str(last + 2))]


def test_no_cell_is_a_formula(full: Any, tmp_path: Path) -> None:
    for number, start in enumerate(("=", "+", "-", "@", "\t", "\r", "＝")):
        name = f'{start.strip()}cmd|"/C calc"!A{number}, "x"'
        assert plain_text(f"{start}1") == ("[U+000D]1" if start == "\r" else f"'{start}1")
        details = SupplierDetails(name, PersonDetails(phone="+353 20 910 0131"))
        add_supplier(full.book, details, own=False, code=f"sly-{number}")
    write_sheets(sheets(full.rows()), tmp_path / "sheets")
    texts = [cell for path in (tmp_path / "sheets").iterdir() for row in read(path) for cell in row.values()]
    assert not [one for one in texts if one.startswith(("=", "+", "@", "\t", "\r", "＝"))]
    assert all(one.startswith("-") is False or one[1:].replace(".", "").isdigit() for one in texts)  # our own numbers
    assert read(tmp_path / "sheets" / "personal_text.csv")[-1]["phone"] == "'+353 20 910 0131"
