"""Copy the ledger to another place, as it is, and say what is wrong with it."""

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from ledger.domain.keep.copies import kept
from ledger.domain.keep.finding import Finding
from ledger.errors import DamagedLedger, Refused
from ledger.fileformat import is_ledger
from ledger.operations.keep.check import Verdict, check
from ledger.rows.opened import OlderLedger, open_rows
from ledger.storage.backup import back_up, older_copy


def keep_copy(source: Path, target: Path, *, overwrite: bool) -> Verdict:
    """Copy a ledger, and say what the copy holds and whatever is wrong with it.

    A damaged one is copied too, since what can still be read may be all there is; it only does not take the place of
    a copy that is sound. Raises BadInput for a target that cannot be written or exists (without `overwrite`), Refused
    for one that is a ledger and no older copy of this one, DamagedLedger where a sound copy would give way to a
    damaged one; what was there then stays as it was.
    """
    found: list[Verdict] = []

    def prove(copy: Path) -> None:
        found.append(_verdict(copy, source))
        if found[0].findings and is_ledger(target) and not _verdict(target, target).findings:
            raise DamagedLedger(
                f"{source} does not pass its check, and {target} is an older copy that does, so it stays as it was. "
                "Copy to a new name; to see what is wrong: soapledger check"
            )

    back_up(source, target, overwrite=overwrite, prove=prove)
    return found[0]


def _verdict(path: Path, named: Path) -> Verdict:
    """What the check says of a file, told by another's name; that it cannot be asked is a finding too."""
    try:
        rows = open_rows(path)
    except OlderLedger:
        return _unasked("it is of an earlier format, and could not be brought up to date")
    except DamagedLedger as damage:
        return _unasked(str(damage).replace(str(path), str(named)).rstrip("."))
    try:
        return check(rows)
    finally:
        rows.close()


def _unasked(why: str) -> Verdict:
    return Verdict(0, "", "", (Finding(why),))


@dataclass(frozen=True)
class DayCopy:
    """The copy of a day, and which copies of earlier days were given up for it; `stuck` could not be removed."""

    path: Path
    verdict: Verdict
    removed: tuple[Path, ...]
    stuck: tuple[Path, ...]


def keep_day_copy(source: Path, folder: Path, *, today: date) -> DayCopy:
    """Write a checked copy named by the day into a folder, and keep of the earlier ones what `kept` says.

    Removed are only files named so that hold an older copy of this very ledger, and none for a copy of a damaged one.
    Raises Refused when the name of the day is taken by anything else, and like `keep_copy`; then nothing is removed.
    """
    target = folder / _named(source, today)
    if target.exists() and not is_ledger(target):
        raise Refused(f"{target} is no copy of this ledger, so it stays; move it away, or name another folder.")
    verdict = keep_copy(source, target, overwrite=True)
    copies = {day: path for path in folder.iterdir() if (day := _day(source, path)) and day <= today}
    ours = {day: path for day, path in copies.items() if older_copy(source, path)}
    removed, stuck = [], []
    for day in () if verdict.findings else sorted(ours.keys() - kept(ours) - {today}):
        try:
            ours[day].unlink()
            removed.append(ours[day])
        except OSError:
            stuck.append(ours[day])
    return DayCopy(target, verdict, tuple(removed), tuple(stuck))


def _named(source: Path, day: date) -> str:
    return f"{source.stem}-{day.isoformat()}{source.suffix}"


def _day(source: Path, path: Path) -> date | None:
    """The day a copy is named by; None for a file that is not named so, or is only a link."""
    found = re.fullmatch(rf"{re.escape(source.stem)}-(\d{{4}}-\d\d-\d\d){re.escape(source.suffix)}", path.name)
    if found is None or path.is_symlink() or not path.is_file():
        return None
    try:
        return date.fromisoformat(found[1])
    except ValueError:
        return None
