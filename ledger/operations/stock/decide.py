"""Keeps a decision by name, with the doubts it was given for."""

from collections.abc import Iterable

from ledger.domain.bench.decision import Doubt
from ledger.storage.tables.decision import Decision, DecisionDoubt
from ledger.storage.transaction import Transaction


def decide(tx: Transaction, decision: Decision, doubts: Iterable[Doubt]) -> None:
    """Write a decision and what it is about, so that no later doubt passes for decided."""
    number = tx.add(decision).id
    assert number is not None
    tx.add_all(
        DecisionDoubt(decision_id=number, subject=one.subject, doubt=of) for one in doubts for of in one.particulars
    )
