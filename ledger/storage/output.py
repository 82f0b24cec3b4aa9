"""Every file that is written for her goes through here: its place proved, written beside its name, then moved."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ledger.errors import BadInput, Refused
from ledger.fileformat import is_ledger

_OF_A_LEDGER = ("-journal", "-wal", "-shm")  # what SQLite keeps beside a file (https://sqlite.org/tempfiles.html)


@contextmanager
def written_beside(path: Path, *, force: bool, older_copy: bool = False) -> Iterator[Path]:
    """A new file beside `path` to write into; it takes that name when the block ends well, else it is removed.

    No file is replaced without `force`, and a ledger never, but for an older copy of the same one that the caller
    has looked at (`older_copy`). Raises Refused for a ledger, BadInput for a name that cannot be written.
    """
    beside = _new_beside(path, force, older_copy=older_copy)
    try:
        yield beside
        os.replace(beside, path)
    except OSError as error:
        raise unwritable(path, error) from error
    finally:
        beside.unlink(missing_ok=True)


def prove_target(path: Path, *, force: bool) -> None:
    """Raise what `written_beside` would, before anything is booked: a file is made in that place and removed again."""
    _new_beside(path, force).unlink()


def _new_beside(path: Path, force: bool, *, older_copy: bool = False) -> Path:
    """An empty file under a name of our own, made only where none is; she may have a file of any other name."""
    try:
        _refuse_ledger(path, older_copy)
        if path.is_dir() or not path.name:
            raise BadInput(f"{path} is a folder; name the file to write in it.")
        if os.path.lexists(path) and not path.is_file():
            raise BadInput(f"{path} is not a file that can be replaced; choose another name.")
        if path.exists() and not force:
            raise BadInput(f"{path} exists already; choose another name, or add --force to overwrite it.")
        if not path.parent.is_dir():
            raise BadInput(f"There is no folder {path.parent}; make it first.")
        beside = path.with_name(f".soapledger-{os.urandom(6).hex()}")
        beside.touch(exist_ok=False)
        return beside
    except OSError as error:
        raise unwritable(path, error) from error


def _refuse_ledger(path: Path, older_copy: bool) -> None:
    """Raise Refused when the name, or what it leads to, is a ledger or what belongs to one while it is written."""
    if not older_copy and is_ledger(path):
        raise Refused(f"{path} is a ledger, and a ledger is never overwritten; choose another name.")
    for one in (path, path.resolve()):
        for end in _OF_A_LEDGER:
            if one.name.casefold().endswith(end) and is_ledger(one.with_name(one.name[: -len(end)])):
                raise Refused(f"{path} is a name that belongs to a ledger while it is written; choose another name.")


def unwritable(path: Path, error: OSError) -> BadInput:
    """What the system said about a place, as an answer to what was typed."""
    return BadInput(f"{path} cannot be written ({error.strerror}); choose another place.")
