"""What the ledger knew at an earlier entry."""

import json
import sqlite3
from datetime import date
from typing import Any

import pytest
from freezegun import freeze_time
from making import MADE, planned

from ledger.errors import BadInput
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.house.setup import set_up
from ledger.operations.keep.undo import undo
from ledger.rows.batch import find_batch, plan_lines
from ledger.rows.history import last_entry_before
from ledger.rows.opened import as_known, open_rows
from ledger.rows.settings import settings
from ledger.views.record.record import batch_record


def last(shop: Any) -> int:
    with shop.book.look() as rows:
        return int(rows.execute("SELECT max(id) FROM entry").fetchone()[0])


def used(rows: Any, code: str) -> int:
    return plan_lines(rows, find_batch(rows, code).id)[0].used


def test_before_its_correction_a_line_shows_its_first_weight(shop: Any) -> None:
    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(610_000)]}, on=MADE, by="Nuala")
    first = last(shop)
    weigh(shop.book, code, {1: [Weighed(601_000)]}, on=MADE, by="Nuala", correct=True)
    then, now = open_rows(shop.book.path), shop.rows()
    as_known(then, first)
    assert (used(then, code), used(now, code)) == (610_000, 601_000)
    record = batch_record(then, code, program="1", as_known=True)
    assert record.went_in.materials[0].used == 610_000
    assert record.head.printed_from.entry == first


def test_an_undo_that_came_later_takes_nothing_back(shop: Any) -> None:
    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(600_000)]}, on=MADE, by="Nuala")
    first = last(shop)
    undo(shop.book, first)
    then = open_rows(shop.book.path)
    as_known(then, first)
    assert (used(then, code), used(shop.rows(), code)) == (600_000, 0)
    after = open_rows(shop.book.path)
    as_known(after, first + 1)
    assert used(after, code) == 0


def test_every_table_of_facts_is_held_back(full: Any) -> None:
    rows = open_rows(full.book.path)
    as_known(rows, 1)
    tables = [
        name
        for (name,) in rows.execute("SELECT name FROM main.sqlite_schema WHERE type = 'table'").fetchall()
        if any(row[1] == "entry_id" for row in rows.execute(f"PRAGMA main.table_info({name})"))
    ]
    assert len(tables) > 25
    for table in tables:
        for name in (table, f"live_{table}"):
            assert rows.execute(f"SELECT count(*) FROM {name} WHERE entry_id > 1").fetchone()[0] == 0, name
    assert rows.execute("SELECT max(id) FROM entry").fetchone()[0] == 1
    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        rows.execute("DELETE FROM main.reading")


def test_settings_as_they_stood(shop: Any) -> None:
    from dataclasses import replace

    from shop import SETUP

    before = last(shop)
    set_up(shop.book, replace(SETUP, business="Tidewrack and Daughter"))
    then = open_rows(shop.book.path)
    as_known(then, before)
    assert (settings(then).business, settings(shop.rows()).business) == ("Tidewrack Soaps", "Tidewrack and Daughter")


def test_an_entry_or_a_day_that_is_not_there(shop: Any) -> None:
    with pytest.raises(BadInput, match="There is no entry 900"):
        as_known(shop.rows(), 900)
    with pytest.raises(BadInput, match="Nothing was written in this ledger by then"):
        last_entry_before(shop.rows(), "2026-05-31T23:00:00Z")
    assert last_entry_before(shop.rows(), "2026-06-01T23:00:00Z") == last(shop)


def test_the_record_as_of_a_day(shop: Any, run: Any) -> None:
    code = planned(shop.book, on=date(2026, 6, 1))  # every entry so far is of 1 June, 10:30 in Dublin
    with freeze_time("2026-06-02 08:00:00"):
        run("batch", "log", code, "--line", "1=600 g")
    with freeze_time("2026-06-03 08:00:00"):
        run("batch", "log", code, "--line", "1=603 g", "--correct")
        assert "603 g" in run("batch", "show", code).stdout
        then = run("batch", "show", code, "--as-of", "2026-06-02").stdout
        assert "600 g" in then
        assert "603 g" not in then
        assert "This is what was known at entry" in then
        assert "not planned yet then" in run("batch", "show", code, "--as-of", "1", code=2).stderr
        run("batch", "show", code, "--as-of", "2026-06-02", "-o", "then.pdf")
        assert "not come yet" in run("batch", "show", code, "--as-of", "2026-06-09", code=2).stderr


def walked(rows: Any, code: str) -> set[str]:
    """The questions of a batch record for which some table is read from end to end."""
    asked: list[str] = []
    rows.set_trace_callback(asked.append)
    batch_record(rows, code, program="1")
    rows.set_trace_callback(None)
    found = set()
    for one in asked:
        if one.lstrip().startswith(("SELECT", "WITH")):
            plan = [row["detail"] for row in rows.execute(f"EXPLAIN QUERY PLAN {one}")]
            if any(line.startswith("SCAN") or "_id<?)" in line or "rowid<?)" in line for line in plan):
                found.add(one)
    return found


def test_what_was_known_is_found_by_the_same_indexes(shop: Any) -> None:
    """An answer about an earlier entry reads no table from end to end that the answer about today does not."""
    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(600_000)]}, on=MADE, by="Nuala")
    then, now = open_rows(shop.book.path), shop.rows()
    as_known(then, last(shop))
    assert walked(then, code) <= walked(now, code) != set()


def test_a_batch_that_was_taken_back_later_is_shown_as_it_was_known(shop: Any, run: Any) -> None:
    run("batch", "plan", "plain-bar")
    planned = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    code = shop.rows().execute("SELECT max(code) FROM batch").fetchone()[0]
    run("undo", str(planned), "--yes")
    assert f"Batch {code}" in run("batch", "show", code, "--as-of", str(planned)).stdout
    assert "no batch" in run("batch", "show", code, code=1).stderr
    assert "was not planned yet then" in run("batch", "show", shop.batch, "--as-of", "3", code=2).stderr


def test_the_record_names_who_weighed_last(shop: Any, run: Any) -> None:
    run("batch", "plan", "plain-bar")
    code = shop.rows().execute("SELECT max(code) FROM batch").fetchone()[0]
    run("--as", "Zoe", "batch", "log", code, "--line", "1=600 g")
    run("--as", "Anna", "batch", "log", code, "--line", "1=601 g", "--correct")
    line = json.loads(run("batch", "show", code, "--json").stdout)["materials"][0]
    assert (line["used"], line["weighed_by"]) == (601_000, "Anna")
