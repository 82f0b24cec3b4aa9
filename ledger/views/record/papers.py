"""The papers kept with a batch and its lots, as its record shows them."""

from dataclasses import dataclass

from ledger.rows.kept import Attached
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Column, Pieces, Words, grid


@dataclass(frozen=True)
class Papers(Section):
    """The papers in the order they came."""

    title = "Papers kept with it"
    attachments: tuple[Attached, ...]

    def paper(self, _: Head) -> Pieces:
        """By name and digest."""
        table = grid(
            self.attachments,
            Column("name", lambda one: one.name, 0.25),
            Column("kind", lambda one: one.kind, 0.1),
            Column("of", lambda one: one.subject, 0.1),
            Column("SHA-256", lambda one: one.sha256, 0.55),
        )
        return (table if self.attachments else Words("None attached."),)
