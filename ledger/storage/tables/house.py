"""The ledger's own settings, and what an hour costs."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import CostRateKind, RejectedBars, Units


class SettingsRevision(Fact, table=True):
    """Who she is and how the ledger speaks; the latest counts."""

    __tablename__ = "settings_revision"
    business: str
    country: str
    currency: str
    units: Units = Field(sa_type=String)
    time_zone: str
    phone: str | None = None
    labour_minor_per_hour: int | None = None
    scale_step_mg: int | None = None
    maker: str | None = None
    web: str | None = None
    line: str | None = None
    tax_number: str | None = None
    rejected_bars: RejectedBars | None = Field(default=None, sa_type=String)  # None: they load the good ones


class MarketAddress(Fact, table=True):
    """The responsible person and address for one market."""

    __tablename__ = "market_address"
    settings_revision_id: int
    market: str
    name: str
    address: str


class CostRate(Fact, table=True):
    """What an hour of work, or a batch beside its materials, costs from a day on."""

    __tablename__ = "cost_rate"
    on: date
    kind: CostRateKind = Field(sa_type=String)
    minor: int
