"""What was looked at before a release, and the samples kept."""

from datetime import date

from ledger.storage.tables.entry import Fact


class FinishedCheck(Fact, table=True):
    """One point looked at before the bars of a lot were released."""

    __tablename__ = "finished_check"
    lot_id: int
    on: date
    by: str
    what: str
    found: str
    good: int


class RetainedSample(Fact, table=True):
    """Bars set aside as samples: where they are kept, and until when."""

    __tablename__ = "retained_sample"
    lot_id: int
    on: date
    bars: int
    kept_at: str
    keep_until: date
