"""Take one entry back: an entry of its own that mirrors its movements."""

from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter

from ledger.errors import BadInput, Refused
from ledger.rows.dependants import Dependant, dependants
from ledger.rows.opened import Rows, day
from ledger.storage.book import Book
from ledger.storage.verbs import Moved


@dataclass(frozen=True)
class Undone:
    """Which entry was taken back, and what it had said."""

    entry: int
    said: str


def undo(book: Book, number: int) -> Undone:
    """Take back one entry.

    Its movements are mirrored on their own dates; its other facts no longer count. Raises Refused when
    something later depends on it (named), when it is a decision (followed by another one), an erasure, an
    undo, or was taken back already; BadInput for an entry that is not there.
    """
    with book.write("undo", reverses=number) as tx:
        row = tx.rows.execute("SELECT verb, said, reverses FROM entry WHERE id = ?", (number,)).fetchone()
        if row is None:
            raise BadInput(f"There is no entry {number}; see: soapledger history")
        if row["reverses"] is not None:
            raise Refused(f"Entry {number} is itself an undo; do again what it took back.")
        if tx.rows.execute("SELECT 1 FROM entry WHERE reverses = ?", (number,)).fetchone():
            raise Refused(f"Entry {number} was taken back already.")
        said = str(row["said"]).rstrip(".")
        if _starts_the_ledger(tx.rows, number):
            raise Refused("The start of a ledger is not taken back; change what is wrong with: soapledger init")
        if tx.rows.execute("SELECT 1 FROM erasure WHERE entry_id = ?", (number,)).fetchone():
            raise Refused(f"Entry {number} ({said}) erased for good; it cannot be taken back.")
        if _decides(tx.rows, number):
            raise Refused(
                f"Entry {number} ({said}) is a decision; it is not taken back but followed by another, "
                "such as soapledger lot hold or reject, and both stay to be read."
            )
        if found := dependants(tx.rows, number):
            raise Refused(_held_by(number, said, found))
        moved = tx.rows.execute("SELECT * FROM movement WHERE entry_id = ? ORDER BY id DESC", (number,)).fetchall()
        for (way, place_id, on), alike in groupby(moved, itemgetter("kind", "place_id", "on")):
            mirrored = [
                Moved(
                    one["lot_id"],
                    -one["quantity"],
                    one["batch_id"],
                    one["plan_line_id"],
                    one["customer_id"],
                    None if one["money_minor"] is None else -one["money_minor"],
                    f"takes back entry {number}",
                )
                for one in alike
            ]
            tx.move(mirrored, way, place_id=place_id, on=day(on))
        tx.say(f"Took back entry {number}: {row['said']}")
        return Undone(number, row["said"])


def last_entry(rows: Rows) -> int:
    """The last entry that was not taken back and is no undo. Raises BadInput when there is none."""
    row = rows.execute(
        "SELECT max(id) FROM entry e WHERE reverses IS NULL "
        "AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)"
    ).fetchone()
    if row[0] is None:
        raise BadInput("Nothing was written yet, so there is nothing to take back.")
    return int(row[0])


def _starts_the_ledger(rows: Rows, entry: int) -> bool:
    return rows.execute("SELECT 1 FROM place WHERE entry_id = ? AND kind = 'workshop'", (entry,)).fetchone() is not None


def _decides(rows: Rows, entry: int) -> bool:
    """Whether the entry decides about a lot or a batch that an earlier one made."""
    query = """
        SELECT 1 FROM decision d LEFT JOIN lot l ON l.id = d.lot_id LEFT JOIN batch b ON b.id = d.batch_id
        WHERE d.entry_id = ? AND coalesce(l.entry_id, b.entry_id) <> d.entry_id
    """
    return rows.execute(query, (entry,)).fetchone() is not None


def _held_by(entry: int, said: str, found: tuple[Dependant, ...]) -> str:
    names = ", ".join(one.name for one in found[:5]) + (f" and {len(found) - 5} more" if len(found) > 5 else "")
    verb = "depends" if len(found) == 1 else "depend"
    advice = (
        "A decision is not taken back; book what is true now instead, with soapledger lot count or lot waste."
        if any(one.decision for one in found)
        else "Take that back first, the latest first."
    )
    return f"Entry {entry} ({said}) cannot be taken back: {names} {verb} on it. {advice}"
