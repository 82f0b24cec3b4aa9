"""The details of people, which may be erased."""

from sqlmodel import Field, SQLModel

from ledger.storage.tables.entry import Fact


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
