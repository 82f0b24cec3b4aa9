"""Writes a finished document whole or not at all."""

import os
from pathlib import Path

from ledger.storage.output import prove_target
from ledger.storage.output import written_beside as written_beside


def check_free(path: Path, force: bool) -> None:
    """Prove that a file can be written there, before anything is booked.

    Raises Refused for a ledger; BadInput when a file of that name exists and may not be overwritten, its folder is
    missing, or nothing can be written in it.
    """
    prove_target(path, force=force)


def fill(beside: Path, data: bytes) -> None:
    """Put a document into the file made for it, down to the disk."""
    with beside.open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def write_file(path: Path, data: bytes, *, force: bool) -> None:
    """Write a document whole or not at all. Raises like `check_free`, or when it cannot be written."""
    with written_beside(path, force=force) as beside:
        fill(beside, data)
