"""What lay outside a limit, and what was decided about it, as a batch record shows it."""

from dataclasses import dataclass

from ledger.domain.bench.decision import Deviation
from ledger.units.dates import show_date
from ledger.units.quantity import whole
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid


@dataclass(frozen=True)
class Outside(Section):
    """The deviations in the order they were found."""

    title = "Deviations"
    deviations: tuple[Deviation, ...]

    def paper(self, _: Head) -> Pieces:
        """What it was, by how much, what was done, who decided what and why."""
        table = grid(
            self.deviations,
            Column("", lambda one: str(one.number), 0.04, right=True),
            Column("on", lambda one: whole(show_date(one.on)), 0.12),
            Column("what lay outside, and by how much", lambda one: one.found, 0.34),
            Column("done about it", lambda one: one.done or "nothing said", 0.18),
            Column("decision", _decision, 0.32, bold=True),
        )
        return (table if self.deviations else Words("None: nothing lay outside a limit."),)

    def screen(self, _: Head) -> Pieces:
        """One sentence each."""
        found = [GAP] if self.deviations else []
        for one in self.deviations:
            decided = "open" if one.open else f"{one.verdict} by {one.by}: {one.reason}"
            found.append(Words(f"Deviation {one.number}: {one.found}; {decided}."))
        return tuple(found)


def _decision(one: Deviation) -> str:
    return "OPEN" if one.open else f"{one.verdict}, {one.by}, {show_date(one.decided_on or one.on)}: {one.reason}"
