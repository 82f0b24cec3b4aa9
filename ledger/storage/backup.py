"""Copies of the ledger file, made while it is whole."""

import os
import sqlite3
from pathlib import Path

from ledger.errors import BadInput, DamagedLedger


def back_up(source: Path, target: Path, *, overwrite: bool) -> None:
    """Copy a ledger through SQLite, prove the copy sound, and move it into place.

    Raises BadInput when the target exists and may not be overwritten or its folder is missing,
    DamagedLedger when the copy is not sound.
    """
    if target.exists() and not overwrite:
        raise BadInput(f"{target} exists already; choose another name, or add --force.")
    if not target.parent.is_dir():
        raise BadInput(f"There is no folder {target.parent}; make it first.")
    beside = target.with_name(target.name + ".part")
    beside.unlink(missing_ok=True)
    reading = sqlite3.connect(f"{source.absolute().as_uri()}?mode=ro", uri=True)
    writing = sqlite3.connect(beside)
    try:
        reading.backup(writing)
        verdict = writing.execute("PRAGMA integrity_check").fetchone()[0]
    except sqlite3.DatabaseError as error:
        verdict = str(error)
    finally:
        writing.close()
        reading.close()
    if verdict != "ok":
        beside.unlink(missing_ok=True)
        raise DamagedLedger(f"{source} cannot be copied whole: {verdict}. Keep the file, and your last backup.")
    os.replace(beside, target)
