"""What a person decided."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    Subject,
    Verdict,
)


class Decision(Fact, table=True):
    """What a named person decided about a lot or a batch."""

    lot_id: int | None = None
    batch_id: int | None = None
    verdict: Verdict = Field(sa_type=String)
    on: date
    by: str
    reason: str | None = None


class DecisionDoubt(Fact, table=True):
    """One doubt that a decision was given for."""

    __tablename__ = "decision_doubt"
    decision_id: int
    subject: Subject = Field(sa_type=String)
    doubt: str
