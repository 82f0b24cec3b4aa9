"""Which batches a failed check throws doubt on: those weighed or measured since the last good one."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.tools.equipment import READ_WITH
from ledger.domain.tools.readings import READINGS
from ledger.rows.equipment import CheckRow, EquipmentRow, Measured, checks_of, how_many_ever, measured_between
from ledger.rows.opened import Rows


@dataclass(frozen=True)
class TouchedBatch:
    """One batch, with what was weighed and read of it, and from when until when."""

    code: str
    product: str
    lines: tuple[int, ...]  # the numbers of the lines weighed
    readings: tuple[str, ...]
    first_on: date
    last_on: date


@dataclass(frozen=True)
class Touched:
    """The batches of one failed check; `unsaid` are those of which it was not said with which they were measured."""

    check: CheckRow
    since: date | None  # the last good check; None: there was none before
    batches: tuple[TouchedBatch, ...]
    unsaid: tuple[TouchedBatch, ...]


def touched_since_last_good(rows: Rows, item: EquipmentRow, check: CheckRow) -> Touched:
    """The batches measured with an item after its last good check, up to the day of this one.

    On the day of the good check those written after it count. What names no item is its own where it is the
    only one of its kind that ever was here, else it cannot be excluded.
    """
    good = [one for one in checks_of(rows, item.id) if one.passed and (one.on, one.id) < (check.on, check.id)]
    last = good[-1] if good else None
    found = measured_between(
        rows,
        READ_WITH[item.kind].unit,
        but=next((one.what for one in READINGS.values() if one.tries == item.kind), None),
        since=last,
        until=check.on,
    )
    several = how_many_ever(rows, item.kind) > 1
    named = {one.code for one in found if one.item == item.id}
    own = [one for one in found if one.item in (None, item.id) and (not several or one.code in named)]
    unsaid = [one for one in found if one.item is None and several and one.code not in named]
    return Touched(check, last.on if last else None, _by_batch(own), _by_batch(unsaid))


def _by_batch(found: list[Measured]) -> tuple[TouchedBatch, ...]:
    batches: dict[str, list[Measured]] = {}
    for one in found:
        batches.setdefault(one.code, []).append(one)
    return tuple(
        TouchedBatch(
            code=code,
            product=of[0].product,
            lines=tuple(sorted({one.line for one in of if one.line is not None})),
            readings=tuple(dict.fromkeys(one.what for one in of if one.what is not None)),
            first_on=min(one.on for one in of),
            last_on=max(one.on for one in of),
        )
        for code, of in batches.items()
    )
