"""What was reported of a batch, without who reported it, as its record shows it."""

from dataclasses import dataclass

from ledger.rows.complaint import BatchComplaint
from ledger.units.dates import show_date
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Column, Pieces, Words, grid


@dataclass(frozen=True)
class Complaints(Section):
    """The complaints, nothing personal among them."""

    title = "Complaints"
    complaints: tuple[BatchComplaint, ...]

    def paper(self, _: Head) -> Pieces:
        """With what was done, and whether it is closed."""
        words = {None: "not decided", True: "serious", False: "not serious"}
        table = grid(
            self.complaints,
            Column("", lambda one: str(one.number), 0.04, right=True),
            Column("on", lambda one: show_date(one.on), 0.13),
            Column("what", lambda one: one.what, 0.28),
            Column("seriousness", lambda one: words[one.serious], 0.15),
            Column("what was done", lambda one: "; ".join(step.action for step in one.steps), 0.27),
            Column("closed", lambda one: show_date(one.closed_on) if one.closed_on else "open", 0.13),
        )
        return (table if self.complaints else Words("None booked of this batch."),)
