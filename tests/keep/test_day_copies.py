"""A folder of copies: one for each day, fewer for older times, and nothing of anybody else's ever removed."""

import shutil
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from shop import NOW

from ledger.domain.keep.copies import kept
from ledger.errors import Refused
from ledger.operations.keep.backup import keep_day_copy
from ledger.operations.sell.add_stall import add_stall
from ledger.storage.book import Book

TODAY = date(2026, 6, 1)  # a Monday


def test_of_two_years_of_days_the_last_of_seven_days_five_weeks_and_twelve_months_are_kept() -> None:
    """Counted on a calendar by hand: 1 Jun 2026 is a Monday, so its week has no earlier day in it."""
    every = [TODAY - timedelta(days=one) for one in range(730)]
    days = {date(2026, 6, 1), *(date(2026, 5, day) for day in (31, 30, 29, 28, 27, 26))}
    weeks = {date(2026, 6, 1), *(date(2026, 5, day) for day in (31, 24, 17, 10))}  # the last days of weeks: Sundays
    months = {
        date(2026, 6, 1), date(2026, 5, 31), date(2026, 4, 30), date(2026, 3, 31), date(2026, 2, 28), date(2026, 1, 31),
        date(2025, 12, 31), date(2025, 11, 30), date(2025, 10, 31), date(2025, 9, 30), date(2025, 8, 31),
        date(2025, 7, 31),
    }  # fmt: skip
    assert kept(every) == days | weeks | months


def test_nothing_is_given_up_before_there_are_eight_days() -> None:
    seven = {TODAY - timedelta(days=one) for one in range(7)}
    assert kept(seven) == seven  # Tuesday to Monday
    eighth = seven | {TODAY - timedelta(days=7)}  # Monday before: neither the last of its week nor of its month
    assert kept(eighth) == seven


def test_a_pause_takes_nothing_away_and_the_newest_stays() -> None:
    assert kept([]) == frozenset()
    long_ago = {date(2019, 3, day) for day in range(1, 8)}
    assert kept(long_ago) == long_ago
    assert kept({TODAY}) == {TODAY}
    assert TODAY in kept(long_ago | {TODAY})


def made(day: date) -> str:
    return f"soap-{day.isoformat()}.db"


@pytest.mark.usefixtures("shop", "frozen")
def test_a_folder_that_is_not_there_is_no_name_for_a_file(run: Any, tmp_path: Path) -> None:
    """`backup stick/` is what she types for a stick that is not in."""
    refused = run("backup", "stick/", code=2)
    assert refused.stderr.strip() == "There is no folder stick/; make it or put the stick in, then do it again."
    assert not (tmp_path / "stick").exists()
    (tmp_path / "stick").mkdir()
    assert "soap-2026-06-01.db" in run("backup", "stick/").stdout


@pytest.mark.usefixtures("shop", "frozen")
def test_a_copy_in_a_folder_is_named_by_the_day(run: Any, tmp_path: Path) -> None:
    (tmp_path / "stick").mkdir()
    said = run("backup", "stick").stdout
    assert said.startswith("stick/soap-2026-06-01.db holds 14 entries, checked.")
    assert "soapledger restore stick/soap-2026-06-01.db NEW_FILE" in said
    run("stall", "add", "Hill fair")
    assert "holds 15 entries" in run("backup", "stick").stdout  # a second of the day takes the place of the first
    assert [path.name for path in (tmp_path / "stick").iterdir()] == ["soap-2026-06-01.db"]
    run("--ledger", "stick/soap-2026-06-01.db", "check")


@pytest.mark.usefixtures("frozen")
def test_only_older_copies_of_this_ledger_are_removed_and_each_is_said(shop: Any, run: Any, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    for days in range(1, 11):  # of 22 to 31 May
        shutil.copyfile(shop.book.path, stick / made(TODAY - timedelta(days=days)))
    other = Book.create(tmp_path / "other.db", who="Orla", now=lambda: NOW)
    other.close()
    hers = {
        "soap-2026-05-20.db": (tmp_path / "other.db").read_bytes(),  # another ledger, named likewise
        "soap-2026-05-21.db": b"her notes",
        "soap-2026-13-01.db": shop.book.path.read_bytes(),  # no day
        "soap-2026-05-02-kept.db": shop.book.path.read_bytes(),
        "holiday.jpg": b"a picture",
        made(TODAY + timedelta(days=1)): shop.book.path.read_bytes(),  # of a clock that ran ahead
    }
    for name, data in hers.items():
        (stick / name).write_bytes(data)
    add_stall(shop.book, "Hill fair")
    shop.book.close()
    said = run("backup", "stick").stdout
    # Kept: seven days back to 26 May; 24 May, a Sunday, of its week. Given up: 25, 23 and 22 May.
    gone = ["soap-2026-05-22.db", "soap-2026-05-23.db", "soap-2026-05-25.db"]
    assert [line for line in said.splitlines() if line.startswith("Removed")] == [f"Removed {name}." for name in gone]
    assert {name: (stick / name).read_bytes() for name in hers} == hers
    left = {path.name for path in stick.iterdir()} - hers.keys()
    assert left == {made(date(2026, 5, day)) for day in (24, 26, 27, 28, 29, 30, 31)} | {made(TODAY)}
    assert "Removed" not in run("backup", "stick").stdout


def test_the_name_of_the_day_is_not_taken_from_anything_else(shop: Any, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    (stick / made(TODAY)).write_text("her notes", encoding="utf-8")
    with pytest.raises(Refused, match="move it away"):
        keep_day_copy(shop.book.path, stick, today=TODAY)
    assert (stick / made(TODAY)).read_text(encoding="utf-8") == "her notes"


def test_a_copy_that_goes_on_further_is_not_taken_for_an_older_one(shop: Any, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    shutil.copyfile(shop.book.path, stick / made(TODAY))
    longer = Book(stick / made(TODAY), who="Nuala", now=lambda: NOW)
    add_stall(longer, "Hill fair")
    longer.close()
    before = (stick / made(TODAY)).read_bytes()
    with pytest.raises(Refused, match="longer copy"):
        keep_day_copy(shop.book.path, stick, today=TODAY)
    assert (stick / made(TODAY)).read_bytes() == before
