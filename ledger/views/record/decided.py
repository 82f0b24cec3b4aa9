"""What was decided about a batch and its bars, as its record shows it."""

from dataclasses import dataclass

from ledger.rows.decision import RecordedDecision
from ledger.units.dates import show_date
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid


@dataclass(frozen=True)
class Decided(Section):
    """The decisions in the order they were taken."""

    title = "Decisions"
    decisions: tuple[RecordedDecision, ...]

    def paper(self, _: Head) -> Pieces:
        """With its entry, and whether a later one stands in its place."""
        table = grid(
            self.decisions,
            Column("on", lambda one: show_date(one.on), 0.12),
            Column(
                "decision",
                lambda one: f"{one.subject} {one.what}{' (superseded)' if one.superseded else ''}",
                0.29,
                bold=True,
            ),
            Column("by", lambda one: one.by, 0.16),
            Column("reason", lambda one: one.reason or "", 0.36),
            Column("entry", lambda one: str(one.entry), 0.07, right=True),
        )
        return (table if self.decisions else Words("None taken yet."),)

    def screen(self, _: Head) -> Pieces:
        """What was decided, by whom and why."""
        table = grid(
            self.decisions,
            Column("on", lambda one: show_date(one.on)),
            Column("decided", lambda one: f"{one.subject} {one.what}"),
            Column("by", lambda one: one.by),
            Column("why", lambda one: one.reason or ""),
        )
        return (GAP, table) if self.decisions else ()
