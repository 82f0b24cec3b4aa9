"""Complaints and what was done about them."""

from datetime import date

from ledger.storage.tables.entry import Fact


class Complaint(Fact, table=True):
    """What a customer reported."""

    on: date
    lot_id: int | None = None
    bought: str | None = None
    what: str
    serious: int | None = None
    decided_by: str | None = None
    personal_id: int | None = None
    bought_on: date | None = None
    place_id: int | None = None
    customer_id: int | None = None


class ComplaintStep(Fact, table=True):
    """What was done about a complaint; the latest word on seriousness and batch counts."""

    __tablename__ = "complaint_step"
    complaint_id: int
    on: date
    by: str
    action: str
    serious: int | None = None
    decided_by: str | None = None
    lot_id: int | None = None
    closes: int = 0
