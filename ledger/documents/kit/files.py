"""Writes a finished document whole or not at all."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from ledger.storage.output import flush, prove_target, written_beside


def check_free(path: Path | None, force: bool) -> None:
    """Prove that a file can be written there, before anything is booked; without a path nothing is to be written.

    Raises Refused for a ledger; BadInput when a file of that name exists and may not be overwritten, its folder is
    missing, or nothing can be written in it.
    """
    if path is not None:
        prove_target(path, force=force)


@contextmanager
def drawn_with_entry(path: Path | None, *, force: bool) -> Iterator[Callable[[bytes], None]]:
    """Takes the paper of what the block books, down to the disk before it is committed; after it the file has its name.

    Without a path nothing is kept. Raises like `check_free` before anything is booked, and NotShown where the file
    could not take its name.
    """
    if path is None:
        yield lambda _: None
        return
    with written_beside(path, force=force, booked=True) as beside:
        yield partial(_fill, beside)


def _fill(beside: Path, data: bytes) -> None:
    beside.write_bytes(data)
    flush(beside)


def write_file(path: Path, data: bytes, *, force: bool) -> None:
    """Write a document whole or not at all. Raises like `check_free`, or when it cannot be written."""
    with written_beside(path, force=force) as beside:
        beside.write_bytes(data)
