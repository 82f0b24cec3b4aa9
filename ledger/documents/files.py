"""Writes a finished document: beside its name first, then moved into place."""

import os
from pathlib import Path

from ledger.errors import BadInput


def check_free(path: Path, force: bool) -> None:
    """Raise BadInput when a file of that name exists and may not be overwritten, or its folder is missing."""
    if path.exists() and not force:
        raise BadInput(f"{path} exists already; choose another name, or add --force to overwrite it.")
    if not path.parent.is_dir():
        raise BadInput(f"There is no folder {path.parent}; make it first.")


def write_file(path: Path, data: bytes, *, force: bool) -> None:
    """Write a document whole or not at all. Raises BadInput like `check_free`, or when it cannot be written."""
    check_free(path, force)
    beside = path.with_name(path.name + ".part")
    try:
        beside.write_bytes(data)
        os.replace(beside, path)
    except OSError as error:
        beside.unlink(missing_ok=True)
        raise BadInput(f"{path} cannot be written ({error.strerror}); choose another place.") from None
