"""Put everything a recall reaches, and that is still here, on hold, in one transaction."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from ledger import __version__
from ledger.rows.batch import BatchRow
from ledger.rows.lot import LotRow, lots_by_id
from ledger.rows.settings import printed_from
from ledger.storage.book import Book
from ledger.storage.tables.decision import Decision
from ledger.storage.transaction import Transaction
from ledger.views.recall.reach import Starts, reach
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_answer import STOPPED, recall_answer


def hold_reached(
    book: Book,
    named: Sequence[LotRow],
    *,
    bars_of: Sequence[BatchRow] = (),
    labelled: Sequence[BatchRow] = (),
    asked: Sequence[str],
    on: date,
    by: str,
    reason: str,
) -> RecallAnswer:
    """Hold the named lots and every lot made from them, or from the batches asked for, of which something is here.

    Returns the answer. Lots that are on hold or rejected already stay as they are. The answer is read in the same
    transaction and names its entry, which tells the holds.
    """
    with book.write("recall hold") as tx:
        held = hold_here(tx, Starts(tuple(named), tuple(bars_of), tuple(labelled)), on=on, by=by, reason=reason)
        tx.say(f"Recall of {', '.join(asked)}: put {', '.join(held) or 'nothing'} on hold.")
        answer = recall_answer(
            tx.rows, named, bars_of=bars_of, labelled=labelled, asked=asked, program=__version__, held=True
        )
        number = tx.entry
    with book.look() as rows:
        return replace(answer, printed_from=printed_from(rows, __version__, entry=number))


def hold_here(tx: Transaction, starts: Starts, *, on: date, by: str, reason: str) -> list[str]:
    """Hold every lot reached of which something is here, inside another operation; returns their codes."""
    held = []
    for lot in sorted(lots_by_id(tx.rows, reach(tx.rows, starts).lots).values(), key=lambda lot: lot.id):
        if lot.on_hand and lot.status not in STOPPED:
            tx.add(Decision(lot_id=lot.id, verdict="on hold", on=on, by=by, reason=reason))
            held.append(lot.code)
    return held
