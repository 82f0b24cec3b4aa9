"""Copies of the ledger file, whole or damaged: what is in it now is kept either way."""

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.fileformat import is_ledger, trouble
from ledger.storage.compared import compared
from ledger.storage.output import unwritable, written_beside


def whole(path: Path) -> None:
    """Raise DamagedLedger for a copy whose pages SQLite does not find sound."""
    with closing(sqlite3.connect(path)) as rows:
        if rows.execute("PRAGMA integrity_check").fetchone()[0] != "ok":
            raise DamagedLedger("The ledger is damaged and was not copied. Keep it, and your last backup.")


def back_up(source: Path, target: Path, *, overwrite: bool, prove: Callable[[Path], None] = whole) -> None:
    """Copy a ledger through SQLite, or byte by byte where it cannot read it, and move the copy into place.

    `prove` looks at the copy before that, and raises what stands against it. Raises Refused when the target is a
    ledger and not an older copy of this one; BadInput when it exists and may not be overwritten, or cannot be written.
    """
    try:
        older = is_ledger(target)
        if older:
            _refuse_all_but_older(source, target)
        if target.name and target.with_name(f"{target.name}-journal").exists():
            raise BadInput(f"Beside {target} lies what an interrupted writing of it left; choose another name.")
        with written_beside(target, force=overwrite, older_copy=older, like=source) as beside:
            _copy(source, beside)
            prove(beside)
    except sqlite3.Error as error:
        raise trouble(error) or error from error
    except OSError as error:
        raise unwritable(target, error) from error


def older_copy(source: Path, path: Path) -> bool:
    """Whether a file is a copy of this ledger as it was once, or is now; never the ledger itself."""
    if not is_ledger(path) or path.samefile(source):
        return False
    return compared(source, path).kinship in ("the same", "ours goes on")


def _refuse_all_but_older(source: Path, target: Path) -> None:
    """Raise Refused for a ledger that goes on where this one does not: only an older copy of it gives way."""
    if target.samefile(source):
        raise Refused(f"{target} is the ledger itself; put the copy somewhere else.")
    found = compared(source, target)
    if found.kinship in ("the same", "ours goes on"):
        return
    raise Refused(
        {
            "unreadable": f"{target} is a ledger that cannot be read, so it is not known whether it is an older copy; "
            "choose another name.",
            "theirs goes on": f"{target} is a longer copy of this ledger: its last entry is {found.theirs}, here it is "
            f"{found.ours}. It is not overwritten; see: soapledger --ledger {target} history",
            "they part": f"{target} is no older copy of this ledger: the two went on otherwise after entry "
            f"{found.shared}. It is not overwritten; choose another name.",
            "no relation": f"{target} is another ledger and no older copy of this one; choose another name.",
        }[found.kinship]
    )


def _copy(source: Path, beside: Path) -> None:
    try:
        with (
            closing(sqlite3.connect(f"{source.absolute().as_uri()}?mode=rw", uri=True, timeout=10)) as reading,
            closing(sqlite3.connect(beside)) as writing,
        ):
            reading.execute("PRAGMA query_only = ON")
            reading.backup(writing)
    except sqlite3.DatabaseError as error:
        if not isinstance(trouble(error), DamagedLedger):
            raise
        shutil.copyfile(source, beside)
