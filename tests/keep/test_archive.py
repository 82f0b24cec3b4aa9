"""The whole ledger as a folder: its data is the ledger, row by row, and it can be made again from it."""

import hashlib
import json
import shutil
import sqlite3
from pathlib import Path
from typing import Any

import pytest
from shop import NOW

from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.operations.keep.archive import check_archive, keep_archive
from ledger.operations.keep.check import check
from ledger.operations.keep.restore import restore
from ledger.operations.sell.add_stall import add_stall
from ledger.rows.opened import open_rows


def written(shop: Any, folder: Path) -> Path:
    """The folder, with nothing drawn beside the data."""
    keep_archive(shop.rows(), folder, draw=lambda _: None)
    return folder


@pytest.fixture
def kept(full: Any, built: Any, tmp_path: Path) -> Path:
    """Such a folder of the full shop, written once and copied."""

    def write(book: Any) -> Path:
        rows = open_rows(book.path)
        keep_archive(rows, book.path.with_name("kept"), draw=lambda _: None)
        rows.close()
        return Path(book.path.with_name("kept"))

    _, folder = built("archived", write, full.book.path)
    return Path(shutil.copytree(folder, tmp_path / "kept"))


def every_row(path: Path) -> dict[str, list[tuple[Any, ...]]]:
    """Every row of every table of a file, asked without the program."""
    raw = sqlite3.connect(path)
    names = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    rows = {name: raw.execute(f"SELECT * FROM {name} ORDER BY 1").fetchall() for name in names}
    raw.close()
    return rows


def test_every_row_of_every_table_comes_back_with_the_same_head(full: Any, kept: Path, tmp_path: Path) -> None:
    done = restore(kept, tmp_path / "again.db", present=full.book.path, now=lambda: NOW)
    before = every_row(full.book.path)
    assert all(before.values())  # the ledger of this test has a row in every table
    assert every_row(tmp_path / "again.db") == before
    assert check(open_rows(tmp_path / "again.db")) == check(full.rows())
    assert (done.entries, done.lost) == (len(before["entry"]), ())


def test_a_ledger_made_again_is_guarded_and_written_on(full: Any, kept: Path, run: Any, tmp_path: Path) -> None:
    restore(kept, tmp_path / "again.db", present=full.book.path, now=lambda: NOW)
    raw = sqlite3.connect(tmp_path / "again.db")
    with pytest.raises(sqlite3.IntegrityError, match="never changed"):
        raw.execute("UPDATE movement SET quantity = quantity + 1 WHERE id = 1")
    raw.close()
    run("--ledger", "again.db", "stall", "add", "Hill fair")
    run("--ledger", "again.db", "check")


def test_the_digests_follow_from_the_lines_alone(kept: Path) -> None:
    """The rule as README.txt of the folder tells it, written out once more, sharing nothing with the program."""
    previous = "0" * 64
    entries = list(map(json.loads, (kept / "data" / "entries.jsonl").read_text(encoding="utf-8").splitlines()))
    rows = [line.partition(" ") for one in entries for line in one["lines"]]
    blanked = [json.loads(row) for table, _, row in rows if table == "blanked"]  # which later formats have, as marks
    reads = {one["of_entry"]: one["digest"] for one in blanked}
    for number, one in enumerate(entries, 1):
        told = ("entry", "recorded_at", "who", "verb", "said", "reverses", "program", "previous")
        head = json.dumps([1, *(one[name] for name in told)], ensure_ascii=False)
        marks = [f"marks {one['marks']}"] if one.get("marks") else []
        digest = hashlib.sha256("\n".join([head, *one["lines"], *marks]).encode()).hexdigest()
        assert digest == reads.get(number, one["digest"])
        assert (one["entry"], one["previous"]) == (number, previous)
        previous = one["digest"]
    assert json.loads((kept / "data" / "ledger.json").read_text())["head"] == previous


def test_papers_are_files_named_by_their_digest(kept: Path) -> None:
    papers = list((kept / "data" / "papers").iterdir())
    assert papers
    for path in papers:
        assert hashlib.sha256(path.read_bytes()).hexdigest() == path.name.split(".")[0]


def test_every_file_stands_in_a_list_that_other_programs_read(kept: Path) -> None:
    listed = dict(
        reversed(line.split("  ", 1)) for line in (kept / "SHA256SUMS").read_text(encoding="utf-8").splitlines()
    )
    files = {p.relative_to(kept).as_posix() for p in kept.rglob("*") if p.is_file()} - {"SHA256SUMS"}
    assert set(listed) == files
    assert all(hashlib.sha256((kept / name).read_bytes()).hexdigest() == listed[name] for name in files)


def test_a_folder_that_is_there_is_left_alone(full: Any, tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    for name in ("kept", "soap.db", "nowhere/kept", "."):
        with pytest.raises(BadInput):
            keep_archive(full.rows(), Path(name), draw=lambda _: None)
    assert list((tmp_path / "kept").iterdir()) == []
    assert not list(tmp_path.glob(".soapledger*"))


def test_what_goes_wrong_on_the_way_leaves_nothing(full: Any, tmp_path: Path) -> None:
    def full_disk(_: Path) -> None:
        raise OSError(28, "No space left on device")

    with pytest.raises(BadInput, match="No space left"):
        keep_archive(full.rows(), tmp_path / "kept", draw=full_disk)
    assert not (tmp_path / "kept").exists()
    assert not list(tmp_path.glob(".soapledger*"))


def test_a_folder_is_proved_against_the_ledger_as_it_was_then(full: Any, kept: Path) -> None:
    same = check_archive(full.rows(), kept)
    assert (same.findings, same.ledger_entries - same.entries) == ((), 0)
    add_stall(full.book, "Hill fair")
    later = check_archive(full.rows(), kept)
    assert (later.findings, later.ledger_entries - later.entries) == ((), 1)


@pytest.mark.parametrize("change", ["a weight", "a name", "a paper", "a line less", "a page"])
def test_what_was_changed_in_a_folder_is_found(full: Any, kept: Path, change: str) -> None:
    data = kept / "data"
    if change == "a weight":
        text = (data / "entries.jsonl").read_text(encoding="utf-8")
        assert '\\"quantity\\":5000000' in text
        (data / "entries.jsonl").write_text(text.replace('\\"quantity\\":5000000', '\\"quantity\\":5000001', 1))
    elif change == "a name":
        text = (data / "people.jsonl").read_text(encoding="utf-8")
        (data / "people.jsonl").write_text(text.replace('"name": "', '"name": "X', 1))
    elif change == "a paper":
        next((data / "papers").iterdir()).write_bytes(b"another")
    elif change == "a line less":
        lines = (data / "entries.jsonl").read_text(encoding="utf-8").splitlines(keepends=True)
        (data / "entries.jsonl").write_text("".join(lines[:-1]), encoding="utf-8")
    else:
        (kept / "page.html").write_text("added", encoding="utf-8")
    try:
        findings = check_archive(full.rows(), kept).findings
    except DamagedLedger as error:
        findings = (str(error),)
    assert findings
    if change == "a page":
        assert findings == ("page.html was added",)
    if change in ("a weight", "a name"):  # the rows themselves tell, not the list of files alone
        assert any("not as in the ledger" in one for one in findings)


def test_details_erased_since_are_no_fault_but_said(full: Any, kept: Path, run: Any, tmp_path: Path) -> None:
    held = full.rows().execute("SELECT count(*) FROM personal_text").fetchone()[0]
    people = "SELECT c.code FROM live_customer c JOIN live_customer_revision r ON r.customer_id = c.id JOIN "
    for row in full.rows().execute(people + "personal_text p USING (personal_id) GROUP BY c.code").fetchall():
        run("customer", "erase", row["code"], "--reason", "asked by letter", "--yes")
    gone = held - full.rows().execute("SELECT count(*) FROM personal_text").fetchone()[0]
    assert gone
    found = check_archive(full.rows(), kept)
    assert (found.findings, found.erased_since) == ((), gone)
    full.book.close()
    assert "erased since; destroy it" in run("archive", "--check", "kept").stdout
    again = written(full, tmp_path / "later")
    assert check_archive(full.rows(), again).erased_since == 0
    assert len((again / "data" / "people.jsonl").read_text(encoding="utf-8").splitlines()) == held - gone


def test_what_is_no_such_folder_is_told(full: Any, kept: Path, tmp_path: Path) -> None:
    (tmp_path / "other").mkdir()
    with pytest.raises(BadInput, match="soapledger archive"):
        check_archive(full.rows(), tmp_path / "other")
    about = json.loads((kept / "data" / "ledger.json").read_text())
    (kept / "data" / "ledger.json").write_text(json.dumps(about | {"tables": 99}))
    with pytest.raises(Refused, match="newer soapledger"):
        check_archive(full.rows(), kept)
    with pytest.raises(BadInput):
        restore(tmp_path / "other", tmp_path / "new.db", present=full.book.path, now=lambda: NOW)
    assert not (tmp_path / "new.db").exists()


def test_a_ledger_that_does_not_pass_its_check_is_not_kept(full: Any, tmp_path: Path) -> None:
    full.book.close()
    raw = sqlite3.connect(full.book.path, isolation_level=None)
    raw.execute("DROP TRIGGER movement_never_changed")
    raw.close()
    with pytest.raises(DamagedLedger, match="check"):
        written(full, tmp_path / "kept")
    assert not (tmp_path / "kept").exists()


HOSTILE = '26-001-4 <script>alert(1)</script>"><img src=x onerror=alert(2)> {{ 7 * 7 }} </title>'


@pytest.mark.usefixtures("frozen")
def test_no_text_of_hers_is_run_by_a_browser(full: Any, run: Any, tmp_path: Path) -> None:
    run("supplier", "add", HOSTILE, "--code", "sly", "--phone", HOSTILE)
    run("customer", "add", HOSTILE, "--code", "sly", "--shop", "--address", HOSTILE)
    run("init", "--business", HOSTILE)
    run("receive", "sly", "--line", f"olive oil; 5 kg; lot {HOSTILE}")
    run("batch", "note", full.batch, f"{HOSTILE} as well")  # no name as a whole, so the code in it becomes a link
    run("archive", "kept")
    seen = 0
    for path in (tmp_path / "kept" / "pages").iterdir():
        text = path.read_text(encoding="utf-8")
        assert text.count("<script") == (path.name == "index.html")
        assert "<img" not in text
        assert text.count("</title>") == 1
        assert "49" not in text.partition("<body>")[2].partition("</nav>")[0]
        seen += text.count(
            "&lt;script&gt;alert(1)&lt;/script&gt;&#34;&gt;&lt;img src=x onerror=alert(2)&gt; {{ 7 * 7 }}"
        )
    assert seen > 10
    run("archive", "--check", "kept")


@pytest.mark.usefixtures("full", "frozen")
def test_the_records_are_printed_where_she_asks_for_them(run: Any, tmp_path: Path) -> None:
    run("archive", "kept", "--papers")
    papers = {path.stem for path in (tmp_path / "kept" / "records").iterdir()}
    assert papers == {path.stem for path in (tmp_path / "kept" / "pages").glob("batch-*")}
    assert all(path.read_bytes().startswith(b"%PDF") for path in (tmp_path / "kept" / "records").iterdir())
    assert "records/" in (tmp_path / "kept" / "README.txt").read_text(encoding="utf-8")
    run("archive", "--check", "kept")
    assert "leave one of them out" in run("archive", "kept", "--check", "--papers", code=2).stderr


def test_a_copy_is_restored_into_a_new_file_alone(shop: Any, run: Any, tmp_path: Path) -> None:
    run("backup", "copy.db")
    assert "new file" in run("restore", "copy.db", code=2).stderr  # the ledger itself is there
    add_stall(shop.book, "Hill fair")
    shop.book.close()
    said = run("restore", "copy.db", "new.db").stdout
    assert said.startswith("new.db holds 14 entries, checked.")
    assert "soap.db goes on from there; 1 entry is not in this copy:\n  15  Added stall Hill fair." in said
    (tmp_path / "soap.db").unlink()
    assert run("restore", "copy.db").stdout.startswith("soap.db holds 14 entries, checked.")
    run("check")
    assert (tmp_path / "copy.db").exists()


def test_what_is_lost_is_not_known_where_the_present_ledger_is_none_or_another(shop: Any, run: Any) -> None:
    run("backup", "copy.db")
    add_stall(shop.book, "Hill fair")
    shop.book.close()
    run("backup", "longer.db")
    shutil.move("soap.db", "away.db")
    Path("soap.db").write_bytes(b"no ledger")
    assert "is not known" in run("restore", "copy.db", "new.db").stdout
    shutil.copyfile("copy.db", "soap.db")
    assert "is not known" in run("restore", "longer.db", "new2.db").stdout
    assert "soap.db holds nothing that it lacks." in run("restore", "copy.db", "new3.db").stdout


@pytest.mark.usefixtures("frozen")
def test_what_was_erased_since_is_said_not_to_be_compared(full: Any, run: Any) -> None:
    run("upkeep", "add", "cleaning", "the pots, for Ida Marsh")
    run("customer", "add", "Ida Marsh", "--person")
    run("archive", "kept")
    assert "row by row as the ledger has them." in run("archive", "--check", "kept").stdout
    run("customer", "erase", "Ida Marsh", "--reason", "asked", "--yes")
    said = " ".join(run("archive", "--check", "kept").stdout.split())
    assert "row by row as the ledger has them, but for 2 entries of which something was erased since." in said
    full.book.close()


@pytest.mark.usefixtures("frozen", "shop")
def test_a_folder_of_copies_is_no_copy(run: Any, tmp_path: Path) -> None:
    (tmp_path / "stick").mkdir()
    run("backup", "stick")
    assert "to restore a copy in it, name its file" in run("restore", "stick", "new.db", code=2).stderr


@pytest.mark.usefixtures("shop")
def test_what_cannot_be_restored_leaves_no_file(run: Any, tmp_path: Path) -> None:
    run("backup", "copy.db")
    raw = sqlite3.connect("copy.db", isolation_level=None)
    raw.execute("DROP TRIGGER movement_never_changed")
    raw.execute("UPDATE movement SET quantity = quantity + 1 WHERE id = 1")
    raw.close()
    assert "does not pass its check" in run("restore", "copy.db", "new.db", code=3).stderr
    (tmp_path / "words.txt").write_text("no ledger", encoding="utf-8")
    assert "does not begin as a ledger" in run("restore", "words.txt", "new.db", code=2).stderr
    assert "There is no 999" in run("restore", "9" * 300, "new.db", code=2).stderr
    assert "too long" in run("restore", "copy.db", "9" * 300, code=2).stderr
    assert "There is no nothing.db" in run("restore", "nothing.db", "new.db", code=2).stderr
    assert not (tmp_path / "new.db").exists()


FORMATS = sorted((Path(__file__).parents[1] / "storage" / "formats").glob("*.sql"))


@pytest.mark.parametrize("dump", [FORMATS[0], FORMATS[-1]], ids=lambda path: path.stem)
def test_a_copy_of_an_earlier_format_is_restored_as_it_is(dump: Path, run: Any, tmp_path: Path) -> None:
    raw = sqlite3.connect(tmp_path / "old.db")
    raw.executescript(dump.read_text(encoding="utf-8"))
    raw.close()
    before = every_row(tmp_path / "old.db")
    assert f"holds {len(before['entry'])} entries" in run("restore", "old.db", "new.db").stdout
    assert every_row(tmp_path / "new.db") == before
    run("--ledger", "new.db", "check")


@pytest.mark.usefixtures("frozen")
def test_an_archive_made_after_a_paper_was_erased_is_proved_and_restored(full: Any, run: Any, tmp_path: Path) -> None:
    run("customer", "add", "Ida Marsh", "--person")
    (tmp_path / "note.txt").write_text("Ida Marsh was here", encoding="utf-8")
    run("attach", "note.txt", "--to", full.olive)
    run("customer", "erase", "Ida Marsh", "--reason", "asked", "--yes")
    run("archive", "kept")
    assert all(path.read_bytes() for path in Path("kept/data/papers").iterdir())
    assert "row by row" in run("archive", "--check", "kept").stdout
    run("restore", "kept", "new.db")
    assert "nothing is wrong" in run("--ledger", "new.db", "check").stdout
    assert every_row(Path("new.db")) == every_row(full.book.path)


@pytest.mark.usefixtures("frozen")
def test_a_name_longer_than_a_file_may_have_still_has_its_page(full: Any, run: Any, tmp_path: Path) -> None:  # noqa: ARG001
    for end in "ab":
        run("supplier", "add", "x" * 250 + end)
    run("archive", "kept")
    pages = [path.name for path in Path("kept/pages").iterdir() if path.name.startswith("supplier-xxx")]
    assert len(pages) == 2
    assert all(len(name) < 200 and name in Path("kept/pages/index.html").read_text(encoding="utf-8") for name in pages)
