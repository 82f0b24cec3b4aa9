"""Every entry, and what each of its rows carries."""

from sqlmodel import Field, SQLModel


class Entry(SQLModel, table=True):
    """One operation: who wrote what and when, chained to the entry before by digest."""

    id: int | None = Field(default=None, primary_key=True)
    recorded_at: str
    who: str
    verb: str
    said: str
    reverses: int | None = None
    program: str
    previous: str
    digest: str
    marks: str | None = None


class Fact(SQLModel):
    """What every row of an entry carries."""

    id: int | None = Field(default=None, primary_key=True)
    entry_id: int = 0
