"""Recalls: what was asked and why, what was done, and how they ended."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import RecallStepKind


class Recall(Fact, table=True):
    """A recall that was opened, or rehearsed; its answer is asked again."""

    on: date
    by: str
    question: str  # JSON with a format number
    asked_at: int  # the entry at which it was asked
    reason: str
    hazard: str | None = None
    found_by: str | None = None
    exercise: int = 0
    took_ms: int | None = None  # of an exercise: how long its answer took


class RecallStep(Fact, table=True):
    """One thing that was done about a recall."""

    __tablename__ = "recall_step"
    recall_id: int
    on: date
    by: str
    kind: RecallStepKind = Field(sa_type=String)
    customer_id: int | None = None
    complaint_id: int | None = None
    whom: str | None = None  # in her words, where it is neither
    how: str | None = None
    bars: int | None = None
    words: str | None = None


class RecallClose(Fact, table=True):
    """How a recall ended."""

    __tablename__ = "recall_close"
    recall_id: int
    on: date
    by: str
    conclusion: str
    unexplained: int
    reason: str | None = None
