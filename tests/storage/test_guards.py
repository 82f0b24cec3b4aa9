"""What the file itself refuses, whatever program writes to it; here a bare SQLite connection."""

import re
import sqlite3
from typing import Any, Literal, get_args, get_origin

import pytest
from sqlmodel import SQLModel

from ledger.storage.chain import fact_tables

STATEMENT = 'INSERT INTO movement (entry_id, lot_id, place_id, "on", quantity, kind) VALUES (?, ?, ?, ?, ?, ?)'
NEXT = 10_000  # an entry that is still open


def raw(shop: Any) -> sqlite3.Connection:
    """The file as another program would open it."""
    connection = sqlite3.connect(shop.book.path, isolation_level=None)
    connection.row_factory = sqlite3.Row
    connection.execute("PRAGMA recursive_triggers = ON")
    connection.execute("BEGIN")
    return connection


def number(connection: sqlite3.Connection, table: str, code: str) -> int:
    return int(connection.execute(f"SELECT id FROM {table} WHERE code = ?", (code,)).fetchone()[0])


def every_table(connection: sqlite3.Connection) -> list[str]:
    rows = connection.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")
    return [row[0] for row in rows]


def test_no_row_of_any_table_is_ever_changed(full: Any) -> None:
    connection = raw(full)
    for table in every_table(connection):
        column = connection.execute(f"SELECT name FROM pragma_table_info('{table}') WHERE pk = 0").fetchone()[0]
        assert connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0] > 0, f"{table} is empty here"
        with pytest.raises(sqlite3.IntegrityError, match="never changed"):
            connection.execute(f'UPDATE {table} SET "{column}" = "{column}"')


def test_no_row_of_any_table_is_ever_deleted(full: Any) -> None:
    connection = raw(full)
    for table in every_table(connection):
        with pytest.raises(sqlite3.IntegrityError, match=r"never deleted|only by a decision"):
            connection.execute(f"DELETE FROM {table}")


def test_replacing_a_row_is_changing_it(full: Any) -> None:
    connection = raw(full)
    for table in fact_tables(connection):
        row = dict(connection.execute(f"SELECT * FROM {table} LIMIT 1").fetchone())
        row["entry_id"] = NEXT
        columns, marks = ", ".join(f'"{name}"' for name in row), ", ".join("?" for _ in row)
        with pytest.raises(sqlite3.IntegrityError, match="guard"):
            connection.execute(f"INSERT OR REPLACE INTO {table} ({columns}) VALUES ({marks})", tuple(row.values()))


def test_nothing_is_added_to_an_entry_that_was_closed(full: Any) -> None:
    connection = raw(full)
    for table in fact_tables(connection):
        row = dict(connection.execute(f"SELECT * FROM {table} LIMIT 1").fetchone())
        del row["id"]
        columns, marks = ", ".join(f'"{name}"' for name in row), ", ".join("?" for _ in row)
        with pytest.raises(sqlite3.IntegrityError, match=r"was closed|more than was|not accepted"):
            connection.execute(f"INSERT INTO {table} ({columns}) VALUES ({marks})", tuple(row.values()))


# Columns of words that no guard holds: what is said of a decision, and in what a reading is kept.
UNGUARDED = {("decision_doubt", "subject"), ("reading", "unit")}


def words_of(annotation: object) -> set[str]:
    """The words of a list, also where it may be left out; none for any other annotation."""
    if get_origin(annotation) is Literal:
        return set(get_args(annotation))
    return set().union(*map(words_of, get_args(annotation)))


def test_each_column_takes_the_words_that_its_guard_knows(shop: Any) -> None:
    connection, guarded, typed = raw(shop), {}, {}
    for name, sql in connection.execute(
        "SELECT tbl_name, sql FROM sqlite_schema WHERE name LIKE '%\\_known' ESCAPE '\\'"
    ):
        column, listed = re.search(r"WHEN NEW\.(\w+) NOT IN \((.*?)\)", sql).groups()
        guarded[name, column] = set(re.findall(r"'([^']*)'", listed))
    for mapper in SQLModel._sa_registry.mappers:
        for column, field in mapper.class_.model_fields.items():
            if words := words_of(field.annotation):
                typed[mapper.local_table.name, column] = words
    assert typed.keys() - guarded.keys() == UNGUARDED
    assert {place: typed.get(place) for place in guarded} == guarded


def test_an_entry_cannot_leave_a_gap_in_the_numbers(shop: Any) -> None:
    connection = raw(shop)
    with pytest.raises(sqlite3.IntegrityError, match="follows the one before"):
        connection.execute(
            "INSERT INTO entry (id, recorded_at, who, verb, said, program, previous, digest) "
            "VALUES (99, '2026-06-01T09:30:00Z', 'x', 'x', 'x', 'x', 'x', 'x')"
        )


# The olive oil: 5 000 000 mg came on 2 Mar; 600 000 went into the batch on 1 Apr; 4 400 000 are left.
@pytest.mark.parametrize(
    ("on", "quantity", "allowed"),
    [
        ("2026-06-01", -4_400_000, True),  # all of it, today
        ("2026-06-01", -4_400_001, False),  # a milligram too many
        ("2026-03-01", -1, False),  # the day before it came
        ("2026-03-15", -4_400_000, True),  # before the batch, and the batch still finds its 600 g
        ("2026-03-15", -5_000_000, False),  # all that was there that day, but then the batch lacks 600 g
    ],
)
def test_nobody_takes_more_than_was_there_then_or_is_there_later(
    shop: Any, on: str, quantity: int, allowed: bool
) -> None:
    connection = raw(shop)
    lot, place = number(connection, "lot", shop.olive), number(connection, "place", "workshop")
    values = (NEXT, lot, place, on, quantity, "wasted")
    if allowed:
        connection.execute(STATEMENT, values)
    else:
        with pytest.raises(sqlite3.IntegrityError, match="more than was on hand"):
            connection.execute(STATEMENT, values)


def test_stock_at_one_place_cannot_be_taken_from_another(shop: Any) -> None:
    connection = raw(shop)
    lot, place = number(connection, "lot", shop.olive), number(connection, "place", "retained")
    with pytest.raises(sqlite3.IntegrityError, match="more than was on hand"):
        connection.execute(STATEMENT, (NEXT, lot, place, "2026-06-01", -1, "wasted"))


def decide(connection: sqlite3.Connection, lot: int, verdict: str, on: str) -> None:
    connection.execute(
        'INSERT INTO decision (entry_id, lot_id, verdict, "on", by) VALUES (?, ?, ?, ?, ?)',
        (NEXT, lot, verdict, on, "Nuala"),
    )


@pytest.mark.parametrize(
    ("verdict", "decided_on", "used_on", "allowed"),
    [
        ("rejected", "2026-05-01", "2026-06-01", False),
        ("on hold", "2026-05-01", "2026-06-01", False),
        ("on hold", "2026-05-01", "2026-04-20", True),  # it was accepted still on that day
        ("accepted", "2026-05-01", "2026-06-01", True),
    ],
)
def test_only_a_lot_accepted_on_that_date_goes_into_a_batch(
    shop: Any, verdict: str, decided_on: str, used_on: str, allowed: bool
) -> None:
    connection = raw(shop)
    lot, place = number(connection, "lot", shop.olive), number(connection, "place", "workshop")
    decide(connection, lot, verdict, decided_on)
    if allowed:
        connection.execute(STATEMENT, (NEXT, lot, place, used_on, -1000, "consumed"))
    else:
        with pytest.raises(sqlite3.IntegrityError, match="only accepted lots"):
            connection.execute(STATEMENT, (NEXT, lot, place, used_on, -1000, "consumed"))


def new_lot(connection: sqlite3.Connection, of: str, quantity: int, kind: str) -> int:
    """A lot of what another lot is of, in the workshop since 1 May, about which nothing was decided."""
    connection.execute(
        'INSERT INTO lot (entry_id, code, material_id, "on", supplier_id, batch_id) '
        "SELECT ?, 'new', material_id, '2026-05-01', supplier_id, batch_id FROM lot WHERE code = ?",
        (NEXT, of),
    )
    lot = number(connection, "lot", "new")
    place = number(connection, "place", "workshop")
    connection.execute(STATEMENT, (NEXT, lot, place, "2026-05-01", quantity, kind))
    return lot


@pytest.mark.parametrize(("accepted_on", "allowed"), [(None, False), ("2026-05-03", False), ("2026-05-02", True)])
def test_a_lot_goes_into_a_batch_from_the_day_it_is_accepted(shop: Any, accepted_on: str | None, allowed: bool) -> None:
    connection = raw(shop)
    lot, place = new_lot(connection, shop.olive, 1000, "received"), number(connection, "place", "workshop")
    if accepted_on:
        decide(connection, lot, "accepted", accepted_on)
    values = (NEXT, lot, place, "2026-05-02", -1000, "consumed")
    if allowed:
        connection.execute(STATEMENT, values)
    else:
        with pytest.raises(sqlite3.IntegrityError, match="only accepted lots"):
            connection.execute(STATEMENT, values)


@pytest.mark.parametrize(
    ("process", "verdict", "allowed"),
    [
        ("rework", None, False),  # still curing
        ("rework", "rejected", True),
        ("rework", "on hold", True),
        ("rework", "passed", False),
        ("rework", "released", False),
        ("rebatch", "rejected", False),
    ],
)
def test_only_bars_that_may_not_leave_are_reworked(shop: Any, process: str, verdict: str | None, allowed: bool) -> None:
    connection = raw(shop)
    bars, place = new_lot(connection, shop.batch, 4, "yielded"), number(connection, "place", "workshop")
    if verdict:
        decide(connection, bars, verdict, "2026-05-02")
    connection.execute(
        'INSERT INTO batch (entry_id, code, process, material_id, "on") VALUES (?, ?, ?, 1, ?)',
        (NEXT, "again", process, "2026-05-02"),
    )
    statement = STATEMENT.replace("kind)", "kind, batch_id)").replace("?)", "?, ?)")
    values = (NEXT, bars, place, "2026-05-02", -4, "consumed", number(connection, "batch", "again"))
    if allowed:
        connection.execute(statement, values)
    else:
        with pytest.raises(sqlite3.IntegrityError, match="only accepted lots"):
            connection.execute(statement, values)


@pytest.mark.parametrize("kind", ["dispatched", "given", "sold"])
def test_only_bars_released_on_that_date_leave_the_workshop(shop: Any, kind: str) -> None:
    connection = raw(shop)
    bars, place = number(connection, "lot", shop.batch), number(connection, "place", "workshop")
    with pytest.raises(sqlite3.IntegrityError, match="only released bars leave"):  # released on 4 May
        connection.execute(STATEMENT, (NEXT, bars, place, "2026-05-03", -1, kind))
    connection.execute(STATEMENT, (NEXT, bars, place, "2026-05-04", -1, kind))
    decide(connection, bars, "on hold", "2026-05-10")
    with pytest.raises(sqlite3.IntegrityError, match="only released bars leave"):
        connection.execute(STATEMENT, (NEXT, bars, place, "2026-05-11", -1, kind))


def test_only_released_bars_go_to_a_stall_but_what_was_sold_there_is_booked(full: Any) -> None:
    connection = raw(full)
    bars, stall = number(connection, "lot", full.batch), number(connection, "place", "quay-market")
    workshop = number(connection, "place", "workshop")
    connection.execute(STATEMENT, (NEXT, bars, workshop, "2026-05-20", -2, "moved"))
    connection.execute(STATEMENT, (NEXT, bars, stall, "2026-05-20", 2, "moved"))
    decide(connection, bars, "on hold", "2026-05-21")
    with pytest.raises(sqlite3.IntegrityError, match="only released bars leave"):
        connection.execute(STATEMENT, (NEXT, bars, stall, "2026-05-22", 1, "moved"))
    connection.execute(STATEMENT, (NEXT, bars, stall, "2026-05-22", -1, "sold"))


@pytest.mark.parametrize(
    ("bars", "on", "allowed"), [(1, "2026-05-09", True), (2, "2026-05-09", False), (1, "2026-05-10", False)]
)
def test_bars_on_hold_go_back_to_a_stall_only_where_their_coming_home_is_undone(
    full: Any, bars: int, on: str, allowed: bool
) -> None:
    """One bar came home from the quay on 9 May."""
    connection = raw(full)
    lot, stall = number(connection, "lot", full.batch), number(connection, "place", "quay-market")
    decide(connection, lot, "on hold", "2026-05-09")
    values = (NEXT, lot, stall, on, bars, "moved")
    if allowed:
        connection.execute(STATEMENT, values)
    else:
        with pytest.raises(sqlite3.IntegrityError, match="only released bars leave"):
            connection.execute(STATEMENT, values)


def test_personal_details_go_only_after_a_decision_that_is_kept(full: Any) -> None:
    connection = raw(full)
    with pytest.raises(sqlite3.IntegrityError, match="only by a decision"):
        connection.execute("DELETE FROM personal_text")
    person = connection.execute("SELECT personal_id FROM personal_text").fetchone()[0]
    connection.execute("INSERT INTO erasure (entry_id, personal_id, reason) VALUES (?, ?, 'asked')", (NEXT, person))
    connection.execute("DELETE FROM personal_text WHERE personal_id = ?", (person,))
