"""Refuses lye that is likely to be left over, says what would make it safe, and keeps the decision to go on."""

from datetime import date

from ledger.domain.bench.decision import Doubt, undecided
from ledger.errors import Doubted
from ledger.operations.stock.decide import decide
from ledger.rows.decision import decided
from ledger.storage.tables.decision import Decision
from ledger.storage.transaction import Transaction


def keep_or_refuse(
    tx: Transaction, batch_id: int, doubt: Doubt | None, *, anyway: str | None, on: date, by: str, before: str = ""
) -> None:
    """Raise Refused for a doubt that was not decided about the batch, unless a reason was given.

    The reason is kept as a decision, `before` ahead of it.
    """
    if doubt is None or not undecided([doubt], decided(tx.rows, batch_id=batch_id)):
        return
    if not (anyway or "").strip():
        raise Doubted(doubt.words)
    decide(tx, Decision(batch_id=batch_id, verdict="accepted", on=on, by=by, reason=before + (anyway or "")), [doubt])
