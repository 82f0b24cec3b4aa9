"""How two ledger files stand to each other, by their chains of digests."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from itertools import zip_longest
from pathlib import Path
from typing import Literal, NamedTuple

from ledger.fileformat import is_ledger, trouble

Kinship = Literal["the same", "ours goes on", "theirs goes on", "they part", "no relation", "unreadable"]


class Compared(NamedTuple):
    """How another file stands to ours, and the last entry of each; none where theirs is unreadable or has none."""

    kinship: Kinship
    shared: int = 0  # both hold every entry up to this one, the same
    ours: int = 0
    theirs: int = 0


def compared(ours: Path, theirs: Path) -> Compared:
    """Compare two ledgers entry by entry, as their digests stand in the files.

    A digest stands for what its entry wrote and for every entry before it; whether each is true is for `verify`.
    Theirs is unreadable where it is no ledger, or its entries cannot be read. Raises Refused while another program
    writes to one of them, DamagedLedger when ours cannot be read, OSError for a file that cannot be opened.
    """
    shared, ends = 0, [0, 0]
    alike = True
    for here, there in zip_longest(_digests(ours, strict=True), _digests(theirs, strict=False)):
        if there == _UNREADABLE:
            return Compared("unreadable")
        alike = alike and here == there
        if alike:
            shared = here[0]
        ends = [one[0] if one else end for one, end in zip((here, there), ends, strict=True)]
    return Compared(_kinship(shared, *ends), shared, *ends)


def copies_before(path: Path, entry: int, *, since: int) -> tuple[Path, ...]:
    """The ledgers in the same folder that hold what this one wrote from entry `since` on, and not its entry `entry`.

    A ledger that cannot be read is among them, since it may.
    """
    ours, found = dict(_digests(path, strict=True)), []
    for other in sorted(path.absolute().parent.iterdir()):
        try:
            if not is_ledger(other) or other.samefile(path):
                continue
        except OSError:
            continue
        theirs = dict(_digests(other, strict=False))
        if _UNREADABLE[0] in theirs or (theirs.get(since) == ours[since] and theirs.get(entry) != ours[entry]):
            found.append(other)
    return tuple(found)


def _kinship(shared: int, ours: int, theirs: int) -> Kinship:
    if not shared:
        return "no relation"
    if shared == ours:
        return "the same" if shared == theirs else "theirs goes on"
    return "ours goes on" if shared == theirs else "they part"


_UNREADABLE = (0, "")  # no entry has this number


def _digests(path: Path, *, strict: bool) -> Iterator[tuple[int, str]]:
    """The number and digest of every entry, in order; `_UNREADABLE` where, unless `strict`, they cannot be read."""
    try:
        if not strict and not is_ledger(path):
            raise sqlite3.DatabaseError("no ledger")
        with closing(sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True, timeout=10)) as rows:
            yield from rows.execute("SELECT id, digest FROM entry ORDER BY id")
    except sqlite3.Error as error:
        busy = getattr(error, "sqlite_errorcode", 0) & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
        if strict or busy:
            raise trouble(error) or error from error
        yield _UNREADABLE
