"""How long each kind of work on a batch took, as its record shows it."""

from dataclasses import dataclass

from ledger.rows.reading import work_of
from ledger.units.words import WorkStage
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Pieces, Words
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class Worked(Section):
    """The minutes booked by stage; those read at the bench stand among its readings."""

    title = "Work"
    work: dict[WorkStage, int]

    def paper(self, _: Head) -> Pieces:
        """In one sentence, where any was booked."""
        if not self.work:
            return ()
        stages = ", ".join(f"{stage} {minutes} min" for stage, minutes in self.work.items())
        total = f"; {sum(self.work.values())} min in all" if len(self.work) > 1 else ""
        return (Words(f"Work booked: {stages}{total}."),)

    def screen(self, head: Head) -> Pieces:
        """The same."""
        return (GAP, *said) if (said := self.paper(head)) else ()


def worked(read: Sources) -> Worked:
    """What was booked on the batch, in the order of the first."""
    return Worked(work_of(read.rows, read.batch.id))
