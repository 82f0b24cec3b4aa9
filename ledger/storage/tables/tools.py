"""Equipment and upkeep."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    EquipmentKind,
    UpkeepKind,
)


class Equipment(Fact, table=True):
    """A scale, a thermometer, a pH meter."""

    code: str
    kind: EquipmentKind = Field(sa_type=String)


class EquipmentRevision(Fact, table=True):
    """What is known of a piece of equipment; the latest counts."""

    __tablename__ = "equipment_revision"
    equipment_id: int
    name: str
    every_days: int | None = None
    expected: int | None = None
    tolerance: int | None = None
    retired: int = 0
    note: str | None = None


class Upkeep(Fact, table=True):
    """A dated note of cleaning, training, a supplier's approval, or a self-inspection."""

    kind: UpkeepKind = Field(sa_type=String)
    on: date
    by: str
    what: str
    next_on: date | None = None
    supplier_id: int | None = None
