"""Give a batch up before it was cut."""

from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.batch import find_batch, portions_of
from ledger.storage.book import Book
from ledger.storage.tables.decision import Decision
from ledger.units.dates import show_date


def discard_batch(book: Book, code: str, *, on: date, by: str, reason: str) -> None:
    """Give a batch up before it was cut, with its portions: a decision by a named person; what went in stays booked.

    Raises Refused once it was cut (then its bars are rejected), or when it was discarded already; BadInput
    without a reason, or for a day before it was made.
    """
    if not reason.strip():
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    with book.write("batch discard") as tx:
        batch = find_batch(tx.rows, code)
        if batch.yield_lot_id is not None:
            way = f"reject its bars: soapledger reject {batch.code}" if batch.soap else "throw away its lot: lot waste"
            raise Refused(f"Batch {batch.code} is {batch.status}; {way}")
        if batch.discarded:
            raise Refused(f"Batch {batch.code} was discarded already.")
        if on < batch.on:
            raise BadInput(f"Batch {batch.code} is of {show_date(batch.on)}; look at --on.")
        still = [one for one in portions_of(tx.rows, batch.id) if not one.discarded]  # none can come of it any more
        for one in (batch, *still):
            tx.add(Decision(batch_id=one.id, verdict="discarded", on=on, by=by, reason=reason))
        tx.say(f"Discarded batch {batch.code}: {reason}.")
