"""Suppliers, customers, and the details that may be erased."""

from sqlalchemy import String
from sqlmodel import Field, SQLModel

from ledger.storage.tables.entry import Fact
from ledger.units.words import (
    CustomerKind,
)


class Personal(Fact, table=True):
    """Stands for one person's details; only their salted digest is in the chain."""

    salted_digest: str


class PersonalText(SQLModel, table=True):
    """The details themselves, the only rows that may be erased."""

    __tablename__ = "personal_text"
    personal_id: int = Field(primary_key=True)
    salt: str
    name: str | None = None
    phone: str | None = None
    email: str | None = None
    address: str | None = None
    health: str | None = None


class Erasure(Fact, table=True):
    """The decision to erase one person's details."""

    personal_id: int
    reason: str


class Supplier(Fact, table=True):
    """Who supplies; `own` is her own garden or kitchen."""

    code: str
    own: int


class SupplierRevision(Fact, table=True):
    """What is known of a supplier; the latest counts."""

    __tablename__ = "supplier_revision"
    supplier_id: int
    name: str
    personal_id: int | None = None
    note: str | None = None


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
