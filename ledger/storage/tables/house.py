"""The ledger's own settings."""

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    Units,
)


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


class MarketAddress(Fact, table=True):
    """The responsible person and address for one market."""

    __tablename__ = "market_address"
    settings_revision_id: int
    market: str
    name: str
    address: str
