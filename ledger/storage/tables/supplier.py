"""Who supplies."""

from ledger.storage.tables.entry import Fact


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
