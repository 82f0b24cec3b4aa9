"""Book cleaning, training, the approval of a supplier, or a self-inspection."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.tools.upkeep import usual_next
from ledger.errors import BadInput
from ledger.rows.people import supplier_by_code
from ledger.storage.book import Book
from ledger.storage.tables.tools import Upkeep
from ledger.units.dates import show_date
from ledger.units.words import UpkeepKind


@dataclass(frozen=True)
class UpkeepNote:
    """What was done, by whom, and when it is due again."""

    kind: UpkeepKind
    what: str
    on: date
    by: str
    next_on: date | None = None
    supplier: str | None = None


def add_upkeep(book: Book, note: UpkeepNote) -> date | None:
    """Book a note of upkeep and return when it is due again; a self-inspection is due a year later unless told.

    Raises BadInput for empty words, a missing or needless supplier, or a next day that is not after it.
    """
    if not note.what.strip():
        raise BadInput("Write what was done, in quotes.")
    if note.next_on is not None and note.next_on <= note.on:
        raise BadInput(f"The next day must be after {show_date(note.on)}; look at --next.")
    if note.kind == "supplier approval" and not note.supplier:
        raise BadInput("Which supplier is approved? Add --supplier CODE.")
    if note.kind != "supplier approval" and note.supplier:
        raise BadInput(f"Only an approval has a supplier; leave --supplier out of {note.kind}.")
    next_on = note.next_on or usual_next(note.kind, note.on)
    with book.write("upkeep add") as tx:
        supplier = supplier_by_code(tx.rows, note.supplier) if note.supplier else None
        tx.add(
            Upkeep(
                kind=note.kind,
                on=note.on,
                by=note.by,
                what=note.what.strip(),
                next_on=next_on,
                supplier_id=supplier.id if supplier else None,
            )
        )
        tx.say(f"Noted {note.kind}{f' of {supplier.name}' if supplier else ''}: {note.what.strip()}.")
    return next_on
