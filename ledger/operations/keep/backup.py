"""Copy the ledger to another place, as it is, and say what is wrong with it."""

from pathlib import Path

from ledger.domain.keep.invariants import Finding
from ledger.errors import DamagedLedger
from ledger.fileformat import is_ledger
from ledger.operations.keep.check import Verdict, check
from ledger.rows.opened import OlderLedger, open_rows
from ledger.storage.backup import back_up


def keep_copy(source: Path, target: Path, *, overwrite: bool) -> Verdict:
    """Copy a ledger, and say what the copy holds and whatever is wrong with it.

    A damaged one is copied too, since what can still be read may be all there is; it only does not take the place of
    a copy that is sound. Raises BadInput for a target that cannot be written or exists (without `overwrite`), Refused
    for one that is a ledger and no older copy of this one, DamagedLedger where a sound copy would give way to a
    damaged one; what was there then stays as it was.
    """
    found: list[Verdict] = []

    def prove(copy: Path) -> None:
        found.append(_verdict(copy))
        if found[0].findings and is_ledger(target) and not _verdict(target).findings:
            raise DamagedLedger(
                f"{source} does not pass its check, and {target} is an older copy that does, so it stays as it was. "
                "Copy to a new name; to see what is wrong: soapledger check"
            )

    back_up(source, target, overwrite=overwrite, prove=prove)
    return found[0]


def _verdict(path: Path) -> Verdict:
    """What the check says of a file; that it cannot be asked is a finding too."""
    try:
        rows = open_rows(path)
    except OlderLedger:
        return _unasked("it is of an earlier format, and could not be brought up to date")
    except DamagedLedger as damage:
        return _unasked(str(damage).rstrip("."))
    try:
        return check(rows)
    finally:
        rows.close()


def _unasked(why: str) -> Verdict:
    return Verdict(0, "", "", (Finding(why),))
