"""Papers kept."""

from sqlmodel import Field, SQLModel

from ledger.storage.tables.entry import Fact


class AttachedContent(SQLModel, table=True):
    """The bytes of a paper or picture, by SHA-256."""

    __tablename__ = "attached_content"
    digest: str = Field(primary_key=True)
    content: bytes


class Attachment(Fact, table=True):
    """A paper or picture attached to what it vouches for."""

    digest: str
    name: str
    kind: str
    lot_id: int | None = None
    batch_id: int | None = None
    recipe_id: int | None = None
    material_id: int | None = None
