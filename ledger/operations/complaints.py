"""Book what a customer reported, and who decided how serious it is."""

from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, remember_person
from ledger.storage.tables import Complaint
from ledger.views.lots import find_lot


@dataclass(frozen=True)
class Report:
    """What was reported; the person's details and health stand where they can be erased."""

    on: date
    what: str
    person: PersonDetails
    batch: str | None = None
    bought: str | None = None
    serious: bool | None = None
    decided_by: str | None = None


def book_complaint(book: Book, report: Report) -> int:
    """Book a complaint and return its number.

    A serious one needs the person who decided so. Raises BadInput for empty words or a missing name.
    """
    if not report.what.strip():
        raise BadInput("Write what happened, in quotes.")
    if report.serious is not None and not report.decided_by:
        raise BadInput("Who decided how serious it is? Add --decided-by NAME; it is for a person to decide.")
    with book.write("complaint add") as tx:
        lot = find_lot(tx.rows, report.batch) if report.batch else None
        row = tx.add(
            Complaint(
                on=report.on,
                lot_id=lot.id if lot else None,
                bought=report.bought,
                what=report.what.strip(),
                serious=None if report.serious is None else int(report.serious),
                decided_by=report.decided_by,
                personal_id=remember_person(tx, report.person),
            )
        )
        assert row.id is not None
        tx.say(f"Booked complaint {row.id}{f' about batch {lot.code}' if lot else ''}.")
    return row.id
