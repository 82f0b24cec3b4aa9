"""Which batches a complaint without a code may be about: the bars that could have been bought there by then."""

from ledger.rows.complaint import CandidateBatch, ComplaintCard, bars_that_left
from ledger.rows.opened import Rows


def candidate_batches(rows: Rows, complaint: ComplaintCard) -> tuple[CandidateBatch, ...]:
    """The batches it may be about, up to the day it was bought or else reported, the latest supplied first.

    Of a stall: bars sold there, or standing there that day and not counted yet. Of a customer: bars sent or
    given, those that came back later included. Where neither is known: every bar supplied. None once its batch
    is named.
    """
    if complaint.batch_code:
        return ()
    return bars_that_left(
        rows, complaint.bought_on or complaint.on, place_id=complaint.place_id, customer_id=complaint.customer_id
    )
