"""Blanks a free text where it stands; the erasing entry attests what its entry reads from then on."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ledger.storage.chain import redone_digests
from ledger.storage.marks import ERASED
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
    digests = redone_digests(tx.rows, blanks)
    tx.add_all(
        Blanked(
            of_entry=one.entry,
            of_table=one.table,
            of_row=one.row,
            of_column=one.column,
            digest=digests[one.entry],
        )
        for one in places
    )
    for one in places:
        if one.is_paper:
            query = "UPDATE attached_content SET content = x'' WHERE content <> x'' AND digest = "
            tx.rows.execute(f"{query}(SELECT digest FROM attachment WHERE id = ?)", (one.row,))
        else:
            tx.rows.execute(f'UPDATE {one.table} SET "{one.column}" = ? WHERE id = ?', (one.after, one.row))
    assert redone_digests(tx.rows, {one: {} for one in digests}) == digests, "an entry reads otherwise"


def _salts(tx: Transaction, entries: set[int]) -> Iterator[Blank]:
    """What is left of it, and of the marks of the rows; entries of the sixth format and earlier had none."""
    for entry in sorted(entries):
        marked = "SELECT 1 FROM entry WHERE id = ? AND marks IS NOT NULL AND marks <> 'erased'"
        if tx.rows.execute(marked, (entry,)).fetchone():
            yield Blank(entry, "entry", entry, "marks", ERASED)
        query = "SELECT id FROM entry_salt WHERE entry_id = ? AND salt <> 'erased'"
        for row in tx.rows.execute(query, (entry,)).fetchall():
            yield Blank(entry, "entry_salt", row[0], "salt", "erased")
