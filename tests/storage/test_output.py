"""A file that is written never takes the place of a ledger, and never that of another file unasked."""

import errno
import hashlib
import os
import shutil
import stat
import time
from contextlib import suppress
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from shop import NOW

from ledger.documents.kit.files import check_free, write_file
from ledger.documents.recall.contact_list import contact_list
from ledger.errors import BadInput, Refused
from ledger.operations.keep.backup import keep_copy
from ledger.operations.sell.add_stall import add_stall
from ledger.storage.book import Book
from ledger.storage.output import written_beside

NOBODY: Any = SimpleNamespace(call=(), may_be=())  # a recall that reached no one


def names_of_a_ledger(folder: Path) -> list[Path]:
    """The ledger `soap.db` by every road to it, and the names SQLite needs beside it."""
    (folder / "link.pdf").symlink_to(folder / "soap.db")
    os.link(folder / "soap.db", folder / "hard.pdf")
    shutil.copy(folder / "soap.db", folder / "stick.pdf")
    (folder / "journal.pdf").symlink_to(folder / "soap.db-journal")
    names = ["soap.db", "link.pdf", "hard.pdf", "stick.pdf", "soap.db-journal", "soap.db-WAL", "journal.pdf"]
    return [*(folder / name for name in names), Path("soap.db"), Path(".") / ".." / folder.name / "soap.db"]


@pytest.mark.usefixtures("book")
def test_no_paper_takes_the_place_of_a_ledger_forced_or_not(tmp_path: Path) -> None:
    for path in names_of_a_ledger(tmp_path):
        for force in (False, True):
            before = path.read_bytes() if path.exists() else None
            with pytest.raises(Refused, match="ledger"):
                write_file(path, b"%PDF", force=force)
            with pytest.raises(Refused, match="ledger"):
                check_free(path, force)
            assert (path.read_bytes() if path.exists() else None) == before, path


def test_a_name_beside_no_ledger_and_another_programs_database_are_hers_to_replace(tmp_path: Path) -> None:
    write_file(tmp_path / "day-journal", b"%PDF", force=False)
    (tmp_path / "songs.db").write_bytes(b"SQLite format 3\0" + bytes(84))  # application_id 0 at byte 68: not ours
    write_file(tmp_path / "songs.db", b"%PDF", force=True)
    assert (tmp_path / "songs.db").read_bytes() == b"%PDF"


def test_a_half_written_file_of_hers_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "record.pdf.part").write_bytes(b"hers")
    (tmp_path / "soap.db.part").write_bytes(b"hers too")
    write_file(tmp_path / "record.pdf", b"%PDF", force=False)
    Book.create(tmp_path / "soap.db", who="Nuala", now=lambda: pytest.fail("nothing is booked")).close()
    kept = {one.name: one.read_bytes() for one in tmp_path.glob("*.part")}
    assert kept == {"record.pdf.part": b"hers", "soap.db.part": b"hers too"}
    assert {one.name for one in tmp_path.iterdir()} == {*kept, "record.pdf", "soap.db"}


def test_what_cannot_be_written_is_told_before_and_leaves_nothing(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "notes").write_bytes(b"")
    os.mkfifo(tmp_path / "pipe")
    for name, told in (
        (str(tmp_path / "folder"), "is a folder"),
        (str(tmp_path / "pipe"), "not a file"),
        ("/proc/l.pdf", "cannot be written"),
        (str(tmp_path / "notes" / "l.pdf"), "no folder"),
        (str(tmp_path / ("x" * 300)), "cannot be written"),
    ):
        with pytest.raises(BadInput, match=told):
            check_free(Path(name), force=True)
        with pytest.raises(BadInput, match=told):
            write_file(Path(name), b"%PDF", force=True)
    assert {one.name for one in tmp_path.iterdir()} == {"folder", "notes", "pipe"}


@pytest.mark.parametrize("error", [errno.EPERM, errno.EOPNOTSUPP, errno.EMLINK])
def test_where_a_file_system_has_no_links_the_name_is_held_by_an_empty_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: int
) -> None:
    def no_links(*_: Any, **__: Any) -> None:
        raise OSError(error, "no links here")

    monkeypatch.setattr(os, "link", no_links)
    write_file(tmp_path / "record.pdf", b"%PDF", force=False)
    assert (tmp_path / "record.pdf").read_bytes() == b"%PDF"
    assert os.listdir(tmp_path) == ["record.pdf"]

    def full(*_: Any, **__: Any) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(BadInput, match="No space left"):
        write_file(tmp_path / "second.pdf", b"%PDF", force=False)
    assert os.listdir(tmp_path) == ["record.pdf"]  # the empty file that held the name is gone with it


@pytest.mark.parametrize("links", [True, False], ids=["links", "no links"])
def test_a_file_that_came_meanwhile_is_not_replaced(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, links: bool
) -> None:
    def no_links(*_: Any, **__: Any) -> None:
        raise OSError(errno.EPERM, "no links here")

    if not links:
        monkeypatch.setattr(os, "link", no_links)
    for force, kept in ((False, b"hers"), (True, b"%PDF")):
        path = tmp_path / f"record-{force}.pdf"
        with suppress(BadInput), written_beside(path, force=force) as beside:
            beside.write_bytes(b"%PDF")
            path.write_bytes(b"hers")
        assert path.read_bytes() == kept
    assert len(os.listdir(tmp_path)) == 2


def test_what_a_killed_run_left_is_cleared_up_a_day_later(tmp_path: Path) -> None:
    def left(name: str, data: bytes, hours: float) -> None:
        (tmp_path / name).write_bytes(data)
        since = time.time() - hours * 3600
        os.utime(tmp_path / name, (since, since))

    Book.create(tmp_path / "soap.db", who="Nuala", now=lambda: pytest.fail("nothing is booked")).close()
    left(".soapledger-00000000000a", b"%PDF-1.4 half", 24.01)
    left(".soapledger-00000000000b", b"", 24.01)
    left(".soapledger-00000000000c", b"BEGIN:VCALENDAR\r\n", 400)
    left(".soapledger-00000000000d", contact_list(NOBODY), 400)
    stays = {
        ".soapledger-0000000000a0": (b"%PDF-1.4 half", 23.99),  # another run may be at it
        ".soapledger-0000000000b0": (b"her own words", 400),
        ".soapledger-0000000000c0": ((tmp_path / "soap.db").read_bytes(), 400),  # never a ledger
        ".soapledger-0000000000d0.pdf": (b"%PDF-1.4 hers", 400),
        ".soapledger-notes": (b"", 400),
        "soapledger-0000000000e0": (b"", 400),
    }
    for name, (data, hours) in stays.items():
        left(name, data, hours)
    (tmp_path / ".soapledger-0000000000f0").symlink_to(tmp_path / ".soapledger-notes")
    (tmp_path / ".soapledger-0000000000ff").mkdir()
    write_file(tmp_path / "record.pdf", b"%PDF", force=False)
    found = set(os.listdir(tmp_path)) - {"soap.db", "record.pdf"}
    assert found == {*stays, ".soapledger-0000000000f0", ".soapledger-0000000000ff"}


def mode(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


def test_a_new_file_is_read_by_its_owner_alone_and_a_replaced_one_as_before(book: Book, tmp_path: Path) -> None:
    write_file(tmp_path / "record.pdf", b"%PDF", force=False)
    assert mode(tmp_path / "record.pdf") == 0o600
    (tmp_path / "record.pdf").chmod(0o644)
    write_file(tmp_path / "record.pdf", b"%PDF-2", force=True)
    assert mode(tmp_path / "record.pdf") == 0o644
    Book.create(tmp_path / "new.db", who="Nuala", now=lambda: NOW).close()
    assert mode(tmp_path / "new.db") == 0o600
    book.path.chmod(0o640)
    keep_copy(book.path, tmp_path / "copy.db", overwrite=False)
    assert mode(tmp_path / "copy.db") == 0o640
    (tmp_path / "copy.db").chmod(0o604)
    keep_copy(book.path, tmp_path / "copy.db", overwrite=True)
    assert mode(tmp_path / "copy.db") == 0o604


def test_a_backup_takes_the_place_of_an_older_copy_of_the_same_ledger_alone(book: Book, tmp_path: Path) -> None:
    source, target = book.path, tmp_path / "copy.db"
    keep_copy(source, target, overwrite=False)
    assert keep_copy(source, target, overwrite=True).entries == 1  # the same length
    add_stall(book, "Quay market")
    with pytest.raises(BadInput, match="--force"):
        keep_copy(source, target, overwrite=False)
    assert keep_copy(source, target, overwrite=True).entries == 2


def kept(source: Path, target: Path, *, told: str) -> None:
    """A backup is refused, forced or not, and what was there stays."""
    before = target.read_bytes()
    for force in (False, True):
        with pytest.raises(Refused, match=told):
            keep_copy(source, target, overwrite=force)
    assert target.read_bytes() == before


def test_a_backup_takes_the_place_of_no_longer_copy_and_no_other_ledger(book: Book, tmp_path: Path) -> None:
    early, late = tmp_path / "early.db", tmp_path / "late.db"
    keep_copy(book.path, early, overwrite=False)
    keep_copy(book.path, late, overwrite=False)
    add_stall(book, "Quay market")
    kept(early, book.path, told="longer copy of this ledger: its last entry is 2, here it is 1")
    forked = Book(late, who="Orla", now=book._now)
    add_stall(forked, "Hill fair")
    forked.close()
    kept(book.path, late, told="went on otherwise after entry 1")
    Book.create(tmp_path / "new.db", who="Nuala", now=book._now).close()  # no entry yet
    kept(book.path, tmp_path / "new.db", told="another ledger")


def test_a_backup_onto_the_ledger_itself_is_refused_by_every_road(book: Book, tmp_path: Path) -> None:
    for path in names_of_a_ledger(tmp_path):
        if path.name != "stick.pdf" and path.exists():
            kept(book.path, path, told="the ledger itself")
    with pytest.raises(Refused, match="belongs to a ledger"):
        keep_copy(book.path, tmp_path / "soap.db-journal", overwrite=True)


def test_a_copy_that_cannot_be_read_is_kept(book: Book, tmp_path: Path) -> None:
    target = tmp_path / "copy.db"
    target.write_bytes(book.path.read_bytes()[:4096])
    kept(book.path, target, told="cannot be read")


def test_a_journal_left_beside_a_name_keeps_a_backup_from_it(book: Book, tmp_path: Path) -> None:
    (tmp_path / "copy.db-journal").write_bytes(b"left over")
    with pytest.raises(BadInput, match="interrupted"):
        keep_copy(book.path, tmp_path / "copy.db", overwrite=False)
    assert not (tmp_path / "copy.db").exists()


TAKE_A_FILE = (
    ("batch", "show", "BATCH", "-o"),
    ("batch", "show", "BATCH", "--worksheet", "-o"),
    ("batch", "plan", "plain-bar", "-o"),
    ("cure", "calendar", "--on", "2026-04-10", "-o"),
    ("recipe", "print", "plain-bar", "-o"),
    ("recall", "lot", "4471/2", "--hold", "-o"),
    ("recall", "lot", "4471/2", "--hold", "--csv"),
    ("label", "print", "BATCH", "-o"),
    ("label", "print", "BATCH", "--draft", "-o"),
    ("label", "reprint", "1", "--count", "2", "-o"),
    ("label", "reprint", "1", "-o"),
    ("label", "rack", "BATCH", "-o"),
    ("label", "try-sheet", "a4-6", "-o"),
    ("attachment", "save", "SHA", "-o"),
    ("backup",),
)


@pytest.mark.usefixtures("frozen")
def test_no_command_writes_over_a_ledger(full: Any, run: Any, tmp_path: Path) -> None:
    shutil.copy(full.book.path, tmp_path / "other.db")
    other = Book(tmp_path / "other.db", who="Orla", now=full.book._now)
    add_stall(other, "Hill fair")
    other.close()
    found = {"BATCH": full.batch, "SHA": hashlib.sha256(b"certificate of analysis").hexdigest()}
    before = {name: (tmp_path / name).read_bytes() for name in ("soap.db", "other.db")}
    for words in TAKE_A_FILE:
        for name in before:
            refused = run(*(found.get(word, word) for word in words), name, "--force", code=1).stderr
            assert any(said in refused for said in ("is a ledger", "is the ledger itself", "is a longer copy")), words
            assert {one: (tmp_path / one).read_bytes() for one in before} == before, words
