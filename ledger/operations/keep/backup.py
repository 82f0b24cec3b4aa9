"""Copy the ledger to another place, checked before an older copy gives way to it."""

from pathlib import Path

from ledger.errors import DamagedLedger
from ledger.operations.keep.check import Verdict, check
from ledger.rows.opened import open_rows
from ledger.storage.backup import back_up


def keep_copy(source: Path, target: Path, *, overwrite: bool) -> Verdict:
    """Write a checked copy of a ledger, and say what it holds.

    Raises BadInput for a target that cannot be written or exists (without `overwrite`), Refused for one that is a
    ledger and no older copy of this one, DamagedLedger when the ledger does not pass its check; what was there then
    stays as it was.
    """
    found: list[Verdict] = []

    def prove(copy: Path) -> None:
        rows = open_rows(copy)
        try:
            found.append(check(rows))
        finally:
            rows.close()
        if found[0].findings:
            raise DamagedLedger(f"{source} does not pass its check, so no copy was made; see: soapledger check")

    back_up(source, target, overwrite=overwrite, prove=prove)
    return found[0]
