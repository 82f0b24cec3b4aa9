"""A folder written whole or not at all, and the list of its files by which anyone can tell that none was changed."""

import hashlib
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ledger.errors import BadInput
from ledger.storage.output import unwritable

SUMS = "SHA256SUMS"  # as sha256sum of GNU coreutils writes it and checks it: sha256sum -c SHA256SUMS


@contextmanager
def folder_beside(path: Path) -> Iterator[Path]:
    """A new folder beside `path` to write into; it takes that name when the block ends well, else it is removed.

    Nothing that is there is ever replaced. Raises BadInput for a name that is taken or cannot be written.
    """
    if not path.name:
        raise BadInput(f"{path} is no name for a new folder; write one.")
    if os.path.lexists(path):
        raise BadInput(f"{path} is there already, and nothing is written over it; name a new folder.")
    if not path.parent.is_dir():
        raise BadInput(f"There is no folder {path.parent}; make it first.")
    beside = path.with_name(f".soapledger-{os.urandom(6).hex()}")
    try:
        beside.mkdir(mode=0o700)  # people's details stand in it
        yield beside
        beside.rename(path)
    except OSError as error:
        raise unwritable(path, error) from error
    finally:
        shutil.rmtree(beside, ignore_errors=True)


def list_files(folder: Path) -> None:
    """Write the list of every file in a folder with its SHA-256."""
    lines = (f"{digest}  {name}\n" for name, digest in sorted(_digests(folder).items()))
    (folder / SUMS).write_text("".join(lines), encoding="utf-8", newline="\n")


def changed_files(folder: Path) -> list[str]:
    """What of a folder is not as its list says, in words. Raises BadInput where it has no list."""
    try:
        lines = (folder / SUMS).read_text(encoding="utf-8").splitlines()
    except (OSError, UnicodeDecodeError):
        raise BadInput(f"{folder} holds no ledger that soapledger archive wrote (no {SUMS}).") from None
    listed = {name: digest for digest, _, name in (line.partition("  ") for line in lines)}
    there = _digests(folder)
    return [
        f"{name} {'is missing' if name not in there else 'was added' if name not in listed else 'was changed'}"
        for name in sorted({*listed, *there})
        if listed.get(name) != there.get(name)
    ]


def _digests(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file() and path != folder / SUMS
    }
