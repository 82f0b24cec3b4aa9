"""What a reader of a batch record must know at once."""

from collections import defaultdict
from dataclasses import dataclass

from ledger.rows.batch import find_batch
from ledger.views.bench.batch_notes import notes_that_stay
from ledger.views.lye.lye_check import lye_check
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Pieces, Words
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class LookFirst(Section):
    """The lye at its limits, unknown numbers, lots on hold, weights outside."""

    title = "Look at this first"
    warnings: tuple[str, ...]

    def paper(self, _: Head) -> Pieces:
        """Before everything else, in heavy type."""
        return tuple(Words(f"• {one}", bold=True) for one in self.warnings)

    def screen(self, _: Head) -> Pieces:
        """Marked, under the facts."""
        return tuple(Words(one, first="  ! ") for one in self.warnings)


def look_first(read: Sources) -> LookFirst:
    """The warnings that stay on the record; a portion has the lye of its dough."""
    batch = read.batch
    of_the_lye = lye_check(read.rows, find_batch(read.rows, batch.part_of).id) if batch.part_of else read.check
    found = notes_that_stay(read.rows, batch, of_the_lye.before_addition or of_the_lye.superfat)
    used: dict[int, int] = defaultdict(int)
    for one in read.went_in:
        used[one.lot_id] += one.used
    for lot in (read.lots[number] for number in sorted(used) if used[number] > 0):
        if lot.number_unknown:
            found.append(f"{lot.material}, lot {lot.code}: the supplier's lot number is unknown.")
        if lot.status in ("on hold", "rejected"):
            found.append(f"{lot.material}, lot {lot.code}, is {lot.status} now.")
    for line in read.lines:
        if line.role == "packaging":
            continue
        if line.left_out:
            found.append(f"Line {line.number}, {line.material}: left out.")
        elif line.outside:
            found.append(f"Line {line.number}, {line.material}: weighed outside OK from–to.")
    return LookFirst(tuple(found))
