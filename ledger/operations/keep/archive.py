"""Write the whole ledger as a folder for twenty years, and prove such a folder against the ledger."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from ledger.errors import DamagedLedger
from ledger.operations.keep.check import check
from ledger.rows.opened import Rows
from ledger.storage.archived import Sealed, blanked_since, differences, erased_since, rebuilt, write_data
from ledger.storage.folder import changed_files, folder_beside, list_files


def keep_archive(rows: Rows, folder: Path, *, draw: Callable[[Path], None]) -> Sealed:
    """Write every row of a ledger into a new folder; `draw` puts beside them what people read.

    Raises BadInput for a folder that exists or cannot be written, DamagedLedger for a ledger that does not pass its
    check; then no folder is left.
    """
    with folder_beside(folder) as beside:
        if check(rows).findings:
            raise DamagedLedger("The ledger does not pass its check, so no folder was written; see: soapledger check")
        (beside / "data").mkdir()
        sealed = write_data(rows, beside / "data")
        draw(beside)
        list_files(beside)
    return sealed


@dataclass(frozen=True)
class Compared:
    """A folder held against the ledger: how far it goes, how far the ledger went since, and what differs."""

    entries: int
    head: str
    ledger_entries: int
    erased_since: int  # people whose details were erased since, and stand in the folder still
    erased_in: int  # entries of which a text was erased since, so that they are not compared
    findings: tuple[str, ...]


def check_archive(rows: Rows, folder: Path) -> Compared:
    """Make the ledger again from a folder, in memory, and compare it row by row with the ledger as it was then.

    Raises like `rebuilt`.
    """
    changed = changed_files(folder)
    with rebuilt(folder / "data") as (made, sealed):
        broken = [one.what for one in check(made).findings]
        other = differences(rows, made, until=sealed.entries)
        gone, blanked = erased_since(rows, made), len(blanked_since(rows, sealed.entries))
    entries = check(rows).entries
    beyond = [f"the ledger ends at entry {entries}, the folder at {sealed.entries}"] if entries < sealed.entries else []
    return Compared(sealed.entries, sealed.head, entries, gone, blanked, (*changed, *broken, *beyond, *other))
