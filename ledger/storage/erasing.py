"""Blanks a free text where it stands; the erasing entry attests what its entry reads from then on."""

import json
import sqlite3
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from ledger.storage.chain import Head, entry_digest, rows_of
from ledger.storage.marks import marks_of
from ledger.storage.tables.erasing import Blanked
from ledger.storage.transaction import Transaction


class Blank(NamedTuple):
    """A place in the ledger and what it reads once its text is erased; of a paper's content nothing is left."""

    entry: int
    table: str
    row: int
    column: str
    after: str

    @property
    def is_paper(self) -> bool:
        """Whether it is the content of a paper, which stands in a table of its own."""
        return (self.table, self.column) == ("attachment", "content")


def blank(tx: Transaction, places: Sequence[Blank]) -> None:
    """Erase texts for good, and what was drawn by lot for their entries, without which no guess can be proved right.

    The rows that attest it are written first, since the guards want them there.
    """
    places = (*places, *_salts(tx, {one.entry for one in places}))
    blanks: dict[int, dict[tuple[str, int], dict[str, str]]] = defaultdict(lambda: defaultdict(dict))
    for one in places:
        inner = blanks[one.entry][one.table, one.row]
        if not one.is_paper:  # whose SHA-256 alone stands in an entry, and stays
            inner[one.column] = one.after
    anew = redone(tx.rows, blanks)
    kept = dict(map(tuple, tx.rows.execute("SELECT id, marks FROM main.entry").fetchall()))
    marks = ((one, told.marks) for one, told in anew.items() if told.marks and told.marks != kept[one])
    places = (*places, *(Blank(one, "entry", one, "marks", after) for one, after in marks))
    tx.add_all(
        Blanked(
            of_entry=one.entry,
            of_table=one.table,
            of_row=one.row,
            of_column=one.column,
            digest=anew[one.entry].digest,
        )
        for one in places
    )
    for one in places:
        if one.is_paper:
            query = "UPDATE attached_content SET content = x'' WHERE content <> x'' AND digest = "
            tx.rows.execute(f"{query}(SELECT digest FROM attachment WHERE id = ?)", (one.row,))
        else:
            tx.rows.execute(f'UPDATE {one.table} SET "{one.column}" = ? WHERE id = ?', (one.after, one.row))
    assert redone(tx.rows, {one: {} for one in anew}) == anew, "an entry reads otherwise"


Blanks = Mapping[tuple[str, int], Mapping[str, str]]  # by table and row: what some of its columns read from now on


class Redone(NamedTuple):
    """What an entry and the marks of its rows are once texts of it read otherwise."""

    digest: str
    marks: str | None


def redone(raw: sqlite3.Connection, entries: Mapping[int, Blanks]) -> dict[int, Redone]:
    """What earlier entries are with some texts of their rows, or what they said, put otherwise.

    Without any, what they are as they read now.
    """

    def line(text: str, blank: Mapping[str, str] | None) -> str:
        if not blank:
            return text
        table, _, values = text.partition(" ")
        patched = raw.execute("SELECT json_patch(?, ?)", (values, json.dumps(blank, ensure_ascii=False))).fetchone()
        return f"{table} {patched[0]}"

    def anew(entry_id: int, blanks: Blanks) -> Redone:
        names = ", ".join(Head.__dataclass_fields__)
        said = Head(*raw.execute(f"SELECT {names} FROM main.entry WHERE id = ?", (entry_id,)).fetchone())
        there = [
            (line(text, blanks.get((text.partition(" ")[0], number))), number)
            for text, number in rows_of(raw, entry_id)
        ]
        marks = None if said.marks is None else marks_of(there)
        head = replace(said, said=blanks.get(("entry", entry_id), {}).get("said", said.said), marks=marks)
        return Redone(entry_digest(head, (text for text, _ in there)), marks)

    return {entry_id: anew(entry_id, blanks) for entry_id, blanks in entries.items()}


def _salts(tx: Transaction, entries: set[int]) -> Iterator[Blank]:
    """What is left of it; entries of the sixth format and earlier had none."""
    for entry in sorted(entries):
        query = "SELECT id FROM entry_salt WHERE entry_id = ? AND salt <> 'erased'"
        for row in tx.rows.execute(query, (entry,)).fetchall():
            yield Blank(entry, "entry_salt", row[0], "salt", "erased")
