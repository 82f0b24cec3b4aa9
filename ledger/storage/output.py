"""Every file that is written for her goes through here: its place proved, written beside its name, then moved."""

import os
import re
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from ledger.errors import BadInput, NotShown, Refused
from ledger.fileformat import is_ledger

_OF_A_LEDGER = ("-journal", "-wal", "-shm")  # what SQLite keeps beside a file (https://sqlite.org/tempfiles.html)
_BESIDE = re.compile(r"\.soapledger-[0-9a-f]{12}")  # the names of our own under which a file is written
_OURS = (b"%PDF-", b"BEGIN:VCALENDAR", b'"name","phone","email","address"')  # how our papers begin
_LEFT_SECONDS = 24 * 60 * 60  # nothing of ours is written for so long


@contextmanager
def written_beside(
    path: Path, *, force: bool, older_copy: bool = False, booked: bool = False, like: Path | None = None
) -> Iterator[Path]:
    """A new file beside `path` to write into; it takes that name when the block ends well, else it is removed.

    A new file is for its owner alone to read, one that is replaced keeps who may read it, and a copy of another
    (`like`) has that one's.

    No file is replaced without `force`, and a ledger never, but for an older copy of the same one that the caller
    has looked at (`older_copy`). Raises Refused for a ledger, BadInput for a name that cannot be written; where the
    block books something (`booked`), the file is kept when it cannot take its name, and NotShown says where it is.
    """
    beside = _new_beside(path, force, older_copy=older_copy)
    try:
        yield beside
    except BaseException as error:
        beside.unlink(missing_ok=True)
        if isinstance(error, OSError):
            raise unwritable(path, error) from error
        raise
    try:
        flush(beside)
        if path.exists() or like:
            with suppress(OSError):  # a memory stick may know no permissions
                beside.chmod(stat.S_IMODE((path if path.exists() else like or path).stat().st_mode))
        _move(beside, path, force)
    except OSError as error:
        if not booked:
            beside.unlink(missing_ok=True)
            raise unwritable(path, error) from error
        why = "exists by now" if isinstance(error, FileExistsError) else f"cannot be written ({error.strerror})"
        raise NotShown(f"{path} {why}; what was drawn is in {_kept(beside, path)}.") from error


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
            raise unwritable(path, FileExistsError())
        if not path.parent.is_dir():
            raise BadInput(f"There is no folder {path.parent}; make it first.")
        beside = path.with_name(f".soapledger-{os.urandom(6).hex()}")
        beside.touch(mode=0o600, exist_ok=False)
        _clear_leftovers(path.parent, now=beside.stat().st_mtime)
        return beside
    except OSError as error:
        raise unwritable(path, error) from error


def _move(beside: Path, path: Path, force: bool) -> None:
    """Give a file its name. Raises FileExistsError for one that is taken by now, unless forced."""
    if force:
        os.replace(beside, path)
    else:
        try:
            os.link(beside, path)
        except FileExistsError:
            raise
        except OSError:  # a file system without links, as on a memory stick: an empty file holds the name meanwhile
            path.touch(exist_ok=False)
            try:
                os.replace(beside, path)
            except OSError:
                path.unlink()
                raise
        else:
            beside.unlink()
    with suppress(OSError):  # a folder that cannot be flushed, as on Windows; the file is there all the same
        flush(path.parent)


def flush(path: Path) -> None:
    """Bring a file, or the names in a folder, down to the disk."""
    number = os.open(path, os.O_RDWR if path.is_file() else os.O_RDONLY)
    try:
        os.fsync(number)
    finally:
        os.close(number)


def _kept(beside: Path, path: Path) -> Path:
    """Where a file stays that could not take its name: under one like it, or else where it was written."""
    like = path.with_name(f"{path.stem}-{beside.name[-6:]}{path.suffix}")
    try:
        _move(beside, like, force=False)
    except OSError:
        return beside
    return like


def _clear_leftovers(folder: Path, *, now: float) -> None:
    """Remove what a killed run left there a day before `now` or earlier: known by its name and by how a paper begins.

    What has such a name and begins otherwise may be hers, or a copy of a ledger; it stays.
    """
    with suppress(OSError), os.scandir(folder) as found:
        for one in found:
            if not _BESIDE.fullmatch(one.name) or not one.is_file(follow_symlinks=False):
                continue
            with open(one.path, "rb") as file:
                head = file.read(64)
            if one.stat().st_mtime <= now - _LEFT_SECONDS and (not head or head.startswith(_OURS)):
                os.unlink(one.path)


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
    if isinstance(error, FileExistsError):
        return BadInput(f"{path} exists already; choose another name, or add --force to overwrite it.")
    return BadInput(f"{path} cannot be written ({error.strerror}); choose another place.")
