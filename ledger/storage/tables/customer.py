"""Who buys."""

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import CustomerKind


class Customer(Fact, table=True):
    """A shop or a person her bars go to."""

    code: str
    kind: CustomerKind = Field(sa_type=String)


class CustomerRevision(Fact, table=True):
    """What is known of a customer; the latest counts."""

    __tablename__ = "customer_revision"
    customer_id: int
    name: str | None = None
    personal_id: int | None = None
    note: str | None = None
