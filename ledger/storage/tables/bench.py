"""Batches and the lines of their plans."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    Process,
    Role,
    Stage,
    WorkStage,
)


class Batch(Fact, table=True):
    """The work that turns lots into other lots."""

    code: str
    process: Process = Field(sa_type=String)
    recipe_version_id: int | None = None
    material_id: int
    on: date
    bars_planned: int | None = None
    part_of: int | None = None
    portion: str | None = None


class PlanLine(Fact, table=True):
    """One numbered line of a planned batch."""

    __tablename__ = "plan_line"
    batch_id: int
    number: int
    role: Role = Field(sa_type=String)
    material_id: int
    lot_id: int | None = None
    target: int
    low: int
    high: int
    stage: Stage = Field(sa_type=String)
    in_demand: int | None = None


class PlanTarget(Fact, table=True):
    """A new target for a line, after a mis-weighing was corrected; the latest counts."""

    __tablename__ = "plan_target"
    plan_line_id: int
    target: int
    low: int
    high: int


class Work(Fact, table=True):
    """Minutes of work on a batch, by what was done."""

    batch_id: int
    on: date
    stage: WorkStage = Field(sa_type=String)
    minutes: int
    by: str
