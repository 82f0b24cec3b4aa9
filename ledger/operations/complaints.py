"""Book what a customer reported, and who decided how serious it is."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.dates import show_date
from ledger.errors import BadInput, Refused
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, forget_person, remember_person
from ledger.storage.tables import Complaint
from ledger.views.complaint import complaint
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

    A serious one needs the person who decided so. Raises BadInput for empty words, a missing name or
    verdict, or a day before the bars were cut; Refused for a batch code that is unknown or mistyped.
    """
    if not report.what.strip():
        raise BadInput("Write what happened, in quotes.")
    if report.serious is not None and not report.decided_by:
        raise BadInput("Who decided how serious it is? Add --decided-by NAME; it is for a person to decide.")
    if report.serious is None and report.decided_by:
        raise BadInput(f"What did {report.decided_by} decide? Add --serious yes or --serious no.")
    with book.write("complaint add") as tx:
        lot = find_lot(tx.rows, report.batch) if report.batch else None
        if lot and report.on < lot.on:
            raise BadInput(f"Batch {lot.code} was not there before {show_date(lot.on)}; look at --on.")
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


def erase_complaint(book: Book, number: int, *, reason: str) -> None:
    """Erase who reported a complaint and what it did to them, for good; the complaint itself stays.

    Raises BadInput for an unknown number, Refused when there is nothing to erase.
    """
    with book.write("complaint erase") as tx:
        complaint(tx.rows, number)
        held = tx.rows.execute(
            "SELECT c.personal_id FROM live_complaint c JOIN personal_text p ON p.personal_id = c.personal_id "
            "WHERE c.id = ?",
            (number,),
        ).fetchone()
        if held is None:
            raise Refused(f"No personal details are kept with complaint {number}; nothing to erase.")
        forget_person(tx, held[0], reason)
        tx.say(f"Erased the personal details of complaint {number}: {reason}.")
