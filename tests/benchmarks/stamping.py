"""Writes the last turn of a played ledger again and again, each time four weeks later, as the operations would.

Every row of the turn is copied as it stands: numbers that point at a row move on with what they point at, days move
on by four weeks, codes are made anew by the code's own maker, and the entries get their digests from the storage's
own chain. Nothing here knows the verbs or the columns of a table: both are read from the file.
"""

import hashlib
import json
import re
import sqlite3
from dataclasses import dataclass
from datetime import date, timedelta

from ledger.domain.label.durability import durability
from ledger.storage.chain import Head, entry_digest, fact_tables, lines_by_entry
from ledger.storage.marks import marks_of
from ledger.storage.migrations import migrate
from ledger.units.codes import batch_code, lot_code, supplier_number_key
from ledger.units.dates import MONTHS, parse_date, show_date

Row = dict[str, object]
Marks = dict[str, int]  # the highest number of each table at some moment
SHELF_MONTHS = 24  # of every soap of the workshop
_SEEN = re.compile(
    r"(?P<batch>\b\d\d-\d{3,}-[\dX](?!\d))|(?P<lot>\bL\d+-[\dX](?!\d))|(?P<iso>\b\d{4}-\d\d-\d\d\b)"
    r"|(?P<day>\b\d{1,2} [A-Z][a-z]{2} \d{4}\b)|(?P<number>(?<=\bentry )\d+|(?<=\b[Rr]un )\d+|(?<=\bcomplaint )\d+)"
    rf"|(?P<month>(?<=end of )(?:{'|'.join(MONTHS)}) \d{{4}})"
)
_COUNTED = {"entry ": "entry", "run ": "label_run", "Run ": "label_run", "complaint ": "complaint"}


def marks(rows: sqlite3.Connection) -> Marks:
    """The highest number of each table now."""
    return {
        table: rows.execute(f"SELECT coalesce(max(rowid), 0) FROM {table}").fetchone()[0] for table in _tables(rows)
    }


def _tables(rows: sqlite3.Connection) -> tuple[str, ...]:
    return (*fact_tables(rows), "entry", "personal_text")


@dataclass(frozen=True)
class Turns:
    """The marks after the set-up (first), and after every turn that was played."""

    after: tuple[Marks, ...]

    @property
    def each(self) -> Marks:
        """How many rows of each table the last turn wrote."""
        return {table: number - self.after[-2][table] for table, number in self.after[-1].items()}

    def like(self, back: int) -> bool:
        """Whether the turn so many before the last wrote as many rows of each table as the last."""
        first, then = self.after[-2 - back], self.after[-1 - back]
        return {table: number - first[table] for table, number in then.items()} == self.each


class Stamp:
    """The last turn, ready to be written again."""

    def __init__(self, raw: sqlite3.Connection, turns: Turns, *, days: int, start: date) -> None:
        """`start` is the day of the first delivery: an older day in a text stays.

        Raises ValueError when the last turns did not write the same rows.
        """
        self.raw, self.days, self.start, self.each = raw, days, start, turns.each
        if not (turns.like(1) and turns.like(2)):
            raise ValueError("The last three turns did not write the same rows; play one more before stamping.")
        self.set_up, self.steady, self.first = turns.after[0], turns.after[-4], turns.after[-2]
        self.batches = {row[0]: row[1] for row in raw.execute("SELECT code, id FROM batch")}
        self.codes = {row[1]: row[0] for row in raw.execute("SELECT code, id FROM batch")}
        self.in_year: dict[int, int] = {}
        for code in self.codes.values():
            self.in_year[int(code[:2])] = self.in_year.get(int(code[:2]), 0) + 1
        self.lots_each = raw.execute(
            "SELECT count(*) FROM lot WHERE id > ? AND code LIKE 'L%'", (self.first["lot"],)
        ).fetchone()[0]
        self.made = {
            lot: date.fromisoformat(json.loads(view)["made_on"])
            for lot, view in raw.execute("SELECT lot_id, view FROM label_run WHERE id > ?", (self.first["label_run"],))
        }
        self.rows = {table: self._read(table) for table in _tables(raw)}
        self.points = {table: self._points_of(table) for table in _tables(raw)}

    def _read(self, table: str) -> list[Row]:
        names = [row[1] for row in self.raw.execute(f"PRAGMA table_info({table})")]
        query = f"SELECT * FROM {table} WHERE rowid > ? ORDER BY rowid"
        return [dict(zip(names, row, strict=True)) for row in self.raw.execute(query, (self.first[table],))]

    def _points_of(self, table: str) -> dict[str, str]:
        """Column -> the table whose rows it numbers."""
        found = {row[3]: row[2] for row in self.raw.execute(f"PRAGMA foreign_key_list({table})")}
        own = {} if table == "personal_text" else {"id": table}
        return {**{column: to for column, to in found.items() if to in self.each}, **own}

    def write(self, times: int, *, until: int | None = None) -> None:
        """So many turns more, the last of them only up to the copy of entry `until` where one is given.

        Guards are taken off for it and laid anew; `soapledger check` tells whether all holds.
        """
        raw = self.raw
        raw.execute("PRAGMA foreign_keys = OFF")
        for (name,) in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'trigger'").fetchall():
            raw.execute(f"DROP TRIGGER {name}")
        raw.execute("BEGIN IMMEDIATE")
        heads: list[Row] = []
        for time in range(1, times + 1):
            if time == times and until is not None:
                self._cut_short(until)
            self._renumber_batches(time)
            for table, rows in self.rows.items():
                copies = [self._moved(table, row, time) for row in rows]
                if table == "entry":
                    heads += copies
                elif copies:
                    self._insert(table, copies)
        self._insert("entry", self._chained(heads))
        raw.execute("COMMIT")
        migrate(raw)  # lays the guards anew

    def _cut_short(self, until: int) -> None:
        people = {row["id"] for row in self.rows["personal"] if int(str(row["entry_id"])) <= until}
        for table, rows in self.rows.items():
            if table == "personal_text":
                self.rows[table] = [row for row in rows if row["personal_id"] in people]
            else:
                entry = "id" if table == "entry" else "entry_id"
                self.rows[table] = [row for row in rows if int(str(row[entry])) <= until]

    def _insert(self, table: str, rows: list[Row]) -> None:
        names = list(rows[0])
        columns, places = ", ".join(f'"{name}"' for name in names), ", ".join("?" for _ in names)
        self.raw.executemany(
            f"INSERT INTO {table} ({columns}) VALUES ({places})", [tuple(row.values()) for row in rows]
        )

    def _renumber_batches(self, time: int) -> None:
        """The codes of the batches of this copy, in their order, counted by the year."""
        for row in self.rows["batch"]:
            year = self._day(str(row["on"]), time).year
            number = self.in_year[year % 100] = self.in_year.get(year % 100, 0) + 1
            self.codes[int(str(row["id"])) + time * self.each["batch"]] = batch_code(year, number)

    def _moved(self, table: str, row: Row, time: int) -> Row:
        points, moved = self.points[table], {}
        for column, value in row.items():
            if isinstance(value, int):
                moved[column] = self._number(points[column], value, time) if column in points else value
            else:
                moved[column] = self._text(value, row, time) if isinstance(value, str) else value
        if table == "lot" and moved["supplier_number"]:
            moved["supplier_number_key"] = supplier_number_key(str(moved["supplier_number"]))
        if table == "entry":
            moved["recorded_at"] = (
                self._day(str(row["recorded_at"])[:10], time).isoformat() + str(row["recorded_at"])[10:]
            )
        if "text_digest" in moved:
            moved["text_digest"] = hashlib.sha256(str(moved["text"]).encode()).hexdigest()
        return moved

    def _number(self, table: str, value: int, time: int) -> int:
        """A row of the last three turns moves on; what was set up stays."""
        if value > self.steady[table]:
            return value + time * self.each[table]
        if value <= self.set_up[table]:
            return value
        raise ValueError(f"Row {value} of {table} is of a turn that was not like the last; nothing can follow from it.")

    def _day(self, text: str, time: int) -> date:
        return date.fromisoformat(text) + timedelta(days=self.days * time)

    def _text(self, text: str, row: Row, time: int) -> str:
        if len(text) == 10 and text[4] == text[7] == "-" and text.replace("-", "").isdigit():
            return self._day(text, time).isoformat()
        return _SEEN.sub(lambda found: self._word(found, row, time), text) if "\n" in text or len(text) < 4000 else text

    def _word(self, found: re.Match[str], row: Row, time: int) -> str:
        word, kind = found[0], found.lastgroup
        if kind == "batch":
            known = self.batches.get(word)
            return self.codes[self._number("batch", known, time)] if known else word
        if kind == "lot":
            return lot_code(int(word[1:-2]) + time * self.lots_each)
        if kind in ("iso", "day"):
            on = parse_date(word, today=self.start)
            if on < self.start:
                return word
            return (
                self._day(on.isoformat(), time).isoformat()
                if kind == "iso"
                else show_date(on + timedelta(days=self.days * time))
            )
        if kind == "month":
            made = self.made[int(str(row["lot_id"]))] + timedelta(days=self.days * time)
            return str(durability(made, SHELF_MONTHS, dated_months=30).month_and_year)
        before = found.string[: found.start()]
        table = next(table for says, table in _COUNTED.items() if before.endswith(says))
        return str(int(word) + time * self.each[table])

    def _chained(self, heads: list[Row]) -> list[Row]:
        """The entries with their digests, over the rows as they stand in the file."""
        previous = str(self.raw.execute("SELECT digest FROM entry ORDER BY id DESC LIMIT 1").fetchone()[0])
        waiting = {int(str(head["id"])): head for head in heads}
        for number, lines in lines_by_entry(self.raw, fact_tables(self.raw)):
            if number not in waiting:
                continue
            head = waiting[number]
            head["previous"] = previous
            head["marks"] = marks_of((line, json.loads(line.partition(" ")[2])["id"]) for line in lines)
            said = Head(**{name: head[name] for name in Head.__dataclass_fields__})
            head["digest"] = previous = entry_digest(said, lines)
        return heads
