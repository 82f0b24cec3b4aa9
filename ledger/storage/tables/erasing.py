"""Texts that were blanked."""

from ledger.storage.tables.entry import Fact


class Blanked(Fact, table=True):
    """One text that an erasure blanked, and the digest of its entry as it reads from then on."""

    of_entry: int
    of_table: str
    of_row: int
    of_column: str
    digest: str
