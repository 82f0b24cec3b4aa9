"""What was read, and what went wrong."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    DeviationVerdict,
    ReadingUnit,
)


class Reading(Fact, table=True):
    """Something measured or seen while a batch was made or cured."""

    batch_id: int
    on: date
    at: str | None = None
    what: str
    value: int | None = None
    unit: ReadingUnit | None = Field(default=None, sa_type=String)
    text: str | None = None
    plan_line_id: int | None = None
    corrects: int | None = None
    mark: str | None = None
    method: str | None = None
    equipment_id: int | None = None
    bars: int | None = None


class Deviation(Fact, table=True):
    """Something outside a limit, or gone wrong; open until a person decides."""

    batch_id: int
    on: date
    subject: str
    found: str
    done: str | None = None


class DeviationDecision(Fact, table=True):
    """What a named person decided about a deviation; the latest counts."""

    __tablename__ = "deviation_decision"
    deviation_id: int
    verdict: DeviationVerdict = Field(sa_type=String)
    on: date
    by: str
    reason: str
    done: str | None = None
