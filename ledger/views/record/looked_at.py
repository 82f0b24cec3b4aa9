"""What was looked at before the release, and the samples set aside, as a batch record shows them."""

from dataclasses import dataclass

from ledger.rows.kept import Sample, samples
from ledger.rows.reading import FinishedLook, looks
from ledger.units.dates import show_date
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class LookedAt(Section):
    """The checklist of the recipe point by point, and each retained sample."""

    title = "Looked at before the release"
    checks: tuple[FinishedLook, ...]
    samples: tuple[Sample, ...]

    def paper(self, _: Head) -> Pieces:
        """With its verdict; and how many bars are kept where, until when, or that there are none."""
        said = {True: "good", False: "NOT GOOD", None: "not said"}
        table = grid(
            self.checks,
            Column("on", lambda one: show_date(one.on), 0.13),
            Column("what", lambda one: one.what, 0.17),
            Column("found", lambda one: one.found, 0.42),
            Column("verdict", lambda one: said[one.good], 0.12, bold=True),
            Column("by", lambda one: one.by, 0.16),
        )
        kept = [f"{one.bars} kept at {one.kept_at} until {show_date(one.keep_until)}" for one in self.samples]
        words = (Words(f"Retained samples: {one}.") for one in kept or ["none set aside"])
        return (table if self.checks else Words("Nothing yet."), *words)

    def screen(self, _: Head) -> Pieces:
        """In one sentence."""
        said = {True: "", False: " (not good)", None: " (whether good was not said)"}
        looked = ", ".join(f"{one.what}: {one.found}{said[one.good]}" for one in self.checks)
        return (GAP, Words(f"Looked at before the release: {looked}.")) if self.checks else ()


def looked_at(read: Sources) -> LookedAt:
    """What was looked at of the bars, and what was kept of them."""
    lot = read.batch.yield_lot_id
    return LookedAt(looks(read.rows, lot), samples(read.rows, lot_id=lot) if lot else ())
