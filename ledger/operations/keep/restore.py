"""Make a ledger again from a copy or from an archive, in a new file, and say what it lacks."""

import os
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from ledger.errors import BadInput, DamagedLedger
from ledger.fileformat import is_ledger
from ledger.operations.keep.check import Verdict, check
from ledger.rows.history import HistoryLine, history, history_since
from ledger.rows.opened import OlderLedger, open_rows
from ledger.storage.archived import rebuilt
from ledger.storage.backup import back_up
from ledger.storage.book import Book
from ledger.storage.compared import compared
from ledger.storage.output import written_beside


@dataclass(frozen=True)
class Restored:
    """What a restored ledger holds, and what the present one holds beyond it.

    `lost` is None where that is not known: `present` cannot be read, or is no ledger that went on from this one.
    """

    entries: int
    last: HistoryLine | None
    lost: tuple[HistoryLine, ...] | None


def restore(source: Path, target: Path, *, present: Path, now: Callable[[], datetime]) -> Restored:
    """Write the ledger that a copy or a folder of `archive` holds into a new file, checked before it is there.

    A copy of an earlier format stays of that format, and is brought up to date when it is first used. Raises BadInput
    for a target that exists or a source that is none, DamagedLedger for one that does not pass its check; then nothing
    is left of the new file.
    """
    if os.path.exists(target):  # false for a name too long for a file, of which pathlib raises
        raise BadInput(f"{target} is there already, and a ledger is only restored into a new file; name another.")
    if not os.path.exists(source):
        raise BadInput(f"There is no {source}; name a copy of the ledger, or a folder that soapledger archive wrote.")
    if source.is_dir() and not (source / "data").is_dir():
        raise BadInput(f"{source} is no folder that soapledger archive wrote; to restore a copy in it, name its file.")
    if source.is_file() and not is_ledger(source):
        raise BadInput(f"{source} does not begin as a ledger does; name a copy, or a folder of soapledger archive.")
    found: list[tuple[Verdict, tuple[HistoryLine, ...]]] = []

    def prove(made: Path) -> None:
        try:
            found.append(_proved(made, now))
            wrong = [f"{one.what}." for one in found[0][0].findings]
        except DamagedLedger as damage:
            wrong = [str(damage).replace(str(made), str(source))]
        if wrong:
            lines = "\n".join(f"  {one}" for one in wrong)
            raise DamagedLedger(f"{source} does not pass its check, so nothing was restored from it:\n{lines}")

    if source.is_dir():
        with written_beside(target, force=False) as beside:
            with rebuilt(source / "data", beside):
                pass
            prove(beside)
    else:
        back_up(source, target, overwrite=False, prove=prove)
    lines = found[0][1]
    return Restored(len(lines), lines[-1] if lines else None, _lost(lines, present, target))


def _proved(made: Path, now: Callable[[], datetime]) -> tuple[Verdict, tuple[HistoryLine, ...]]:
    """What the check says of a file; one of an earlier format is brought up to date elsewhere, and stays as it is."""
    try:
        rows = open_rows(made)
    except OlderLedger:
        with TemporaryDirectory() as room:
            trial = Path(room) / "trial.db"
            shutil.copyfile(made, trial)
            Book(trial, who="", now=now).close()
            verdict, lines = _proved(trial, now)
        return verdict, lines[: compared(made, made).ours]
    try:
        return check(rows), history(rows)
    finally:
        rows.close()


def _lost(lines: tuple[HistoryLine, ...], present: Path, target: Path) -> tuple[HistoryLine, ...] | None:
    """The entries that the present ledger wrote after the last one restored."""
    now_there = history_since(present, 1) if present != target and present.exists() else None
    if now_there is None:
        return None
    after = len(lines)
    if after > len(now_there) or (after and now_there[after - 1].digest != lines[-1].digest):
        return None
    return now_there[after:]
