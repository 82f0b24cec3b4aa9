"""Copies of the ledger file, made while it is whole."""

import os
import sqlite3
from collections.abc import Callable
from pathlib import Path

from ledger.errors import BadInput, DamagedLedger
from ledger.fileformat import trouble


def back_up(source: Path, target: Path, *, overwrite: bool, prove: Callable[[Path], None] | None = None) -> None:
    """Copy a ledger through SQLite, prove the copy sound, and only then move it into place.

    `prove` looks at the copy before an older one gives way to it, and raises what it finds. Raises
    BadInput when the target exists and may not be overwritten, is the ledger itself, or has no folder;
    DamagedLedger when the ledger cannot be copied whole.
    """
    if target.is_dir():
        raise BadInput(f"{target} is a folder; name the file to write, such as {target / source.name}.")
    if target.exists() and target.samefile(source):
        raise BadInput(f"{target} is the ledger itself; put the copy somewhere else.")
    if target.exists() and not overwrite:
        raise BadInput(f"{target} exists already; choose another name, or add --force.")
    if not target.absolute().parent.is_dir():
        raise BadInput(f"There is no folder {target.parent}; make it first.")
    beside = target.with_name(target.name + ".part")
    try:
        beside.unlink(missing_ok=True)
        _copy(source, beside)
        if prove:
            prove(beside)
        os.replace(beside, target)
    except sqlite3.Error as error:
        raise trouble(error) or error from error
    except OSError as error:
        raise BadInput(f"{target} cannot be written ({error.strerror}); choose another place.") from error
    finally:
        beside.unlink(missing_ok=True)


def _copy(source: Path, beside: Path) -> None:
    reading = sqlite3.connect(f"{source.absolute().as_uri()}?mode=rw", uri=True, timeout=10)
    writing = sqlite3.connect(beside)
    try:
        reading.execute("PRAGMA query_only = ON")
        reading.backup(writing)
        verdict = writing.execute("PRAGMA integrity_check").fetchone()[0]
    finally:
        writing.close()
        reading.close()
    if verdict != "ok":
        raise DamagedLedger(f"{source} is damaged and was not copied. Keep it, and your last backup.")
