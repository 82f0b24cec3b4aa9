"""Each try of a scale, thermometer or pH meter."""

from datetime import date

from ledger.storage.tables.entry import Fact


class EquipmentCheck(Fact, table=True):
    """One try of a piece of equipment against something known."""

    __tablename__ = "equipment_check"
    equipment_id: int
    on: date
    by: str
    expected: int
    found: int
    tolerance: int
    passed: int
    note: str | None = None
