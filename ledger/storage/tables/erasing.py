"""Texts that were blanked, and what keeps them from being guessed."""

from ledger.storage.tables.entry import Fact


class Blanked(Fact, table=True):
    """One text that an erasure blanked, and the digest of its entry as it reads from then on."""

    of_entry: int
    of_table: str
    of_row: int
    of_column: str
    digest: str


class EntrySalt(Fact, table=True):
    """Drawn by lot for an entry; it goes with the first text of the entry that is erased."""

    __tablename__ = "entry_salt"
    salt: str
