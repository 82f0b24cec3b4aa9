"""Book what a customer reported, what was done about it, and who decided how serious it is."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.complaint import complaint
from ledger.rows.lot import LotRow, find_lot, places
from ledger.rows.people import customer_list
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, impersonal, remember_person
from ledger.storage.tables.complaint import Complaint, ComplaintStep
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.names import match_name


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
    bought_on: date | None = None
    at: str | None = None  # a stall or a customer


@dataclass(frozen=True)
class Noted:
    """What was done about a complaint; a verdict on seriousness has the person who decided it."""

    on: date
    by: str
    action: str
    serious: bool | None = None
    decided_by: str | None = None
    batch: str | None = None


def book_complaint(book: Book, report: Report) -> int:
    """Book a complaint and return its number.

    A serious one needs the person who decided so. Raises BadInput for empty words, a missing name or
    verdict, words that name the person, an unknown stall or customer, or a day before the bars were cut or
    bought; Refused for a batch code that is unknown or mistyped.
    """
    if not report.what.strip():
        raise BadInput("Write what happened, in quotes.")
    _decided(report.serious, report.decided_by)
    _impersonal(report.what, (report.person.name, report.person.phone, report.person.email))
    if report.bought_on and report.bought_on > report.on:
        raise BadInput(f"It was bought after it was reported, on {show_date(report.on)}; look at --bought-on.")
    with book.write("complaint add") as tx:
        lot = _bars(tx, report.batch, report.on)
        place, customer = _seller(tx, report.at) if report.at else (None, None)
        row = tx.add(
            Complaint(
                on=report.on,
                lot_id=lot.id if lot else None,
                bought=report.bought,
                what=report.what.strip(),
                serious=None if report.serious is None else int(report.serious),
                decided_by=report.decided_by,
                personal_id=remember_person(tx, report.person),
                bought_on=report.bought_on,
                place_id=place,
                customer_id=customer,
            )
        )
        assert row.id is not None
        tx.say(f"Booked complaint {row.id}{f' about batch {lot.code}' if lot else ''}.")
    return row.id


def note_complaint(book: Book, number: int, step: Noted) -> None:
    """Note what was done about a complaint; a closed one is open again with it.

    Raises BadInput for empty words, a missing name or verdict, words that name the person, an unknown number, or
    a day before the report; Refused for a batch code that is unknown or mistyped.
    """
    with book.write("complaint note") as tx:
        _add_step(tx, number, step, closes=False)
        tx.say(f"Noted what was done about complaint {number}.")


def close_complaint(book: Book, number: int, step: Noted) -> None:
    """Close a complaint with how it ended. Raises like `note_complaint`; Refused for one that is closed."""
    with book.write("complaint close") as tx:
        card = complaint(tx.rows, number)
        if card.closed_on:
            raise Refused(
                f"Complaint {number} was closed on {show_date(card.closed_on)}. To add something, which opens it "
                f'again: soapledger complaint note {number} "…"'
            )
        if card.steps and step.on < card.steps[-1].on:
            raise BadInput(f"Something was done about it on {show_date(card.steps[-1].on)} still; look at --on.")
        _add_step(tx, number, step, closes=True)
        tx.say(f"Closed complaint {number}.")


def _add_step(tx: Transaction, number: int, step: Noted, *, closes: bool) -> None:
    card = complaint(tx.rows, number)
    if not step.action.strip():
        raise BadInput("Write what was done, in quotes.")
    _decided(step.serious, step.decided_by)
    _impersonal(step.action, (card.person, card.phone, card.email))
    if step.on < card.on:
        raise BadInput(f"Complaint {number} was reported on {show_date(card.on)}; look at --on.")
    lot = _bars(tx, step.batch, card.on)
    tx.add(
        ComplaintStep(
            complaint_id=number,
            on=step.on,
            by=step.by,
            action=step.action.strip(),
            serious=None if step.serious is None else int(step.serious),
            decided_by=step.decided_by,
            lot_id=lot.id if lot else None,
            closes=int(closes),
        )
    )


def _decided(serious: bool | None, by: str | None) -> None:
    if serious is not None and not by:
        raise BadInput("Who decided how serious it is? Add --decided-by NAME; it is for a person to decide.")
    if serious is None and by:
        raise BadInput(f"What did {by} decide? Add --serious yes or --serious no.")


def _impersonal(words: str, personal: Sequence[str | None]) -> None:
    """Raise BadInput for words that repeat who reported it: others read them, in the record of the batch."""
    impersonal(words, personal, "names and health go to --name and --health of complaint add, which can be erased")


def _bars(tx: Transaction, code: str | None, reported: date) -> LotRow | None:
    if code is None:
        return None
    lot = find_lot(tx.rows, code)
    if reported < lot.on:
        raise BadInput(f"Batch {lot.code} was not there before {show_date(lot.on)}; look at --on.")
    return lot


def _seller(tx: Transaction, text: str) -> tuple[int | None, int | None]:
    """The numbers of the stall or of the customer meant."""
    stalls = {one.code: one for one in places(tx.rows) if one.kind == "stall"}
    customers = {one.code: one for one in customer_list(tx.rows)}
    code = match_name(
        text,
        [*((one.code, one.name) for one in stalls.values()), *((one.code, one.name) for one in customers.values())],
        noun="stall or customer",
        add="soapledger stall add NAME, or soapledger customer add NAME",
    )
    if code in stalls:
        return stalls[code].id, None
    return None, customers[code].id
