"""The labels printed for the bars of a batch, as its record shows them."""

from dataclasses import dataclass
from datetime import date

from ledger.rows.label import FirstSupplied, approvals, band_approved, first_supplies, runs, wrapped_in
from ledger.units.dates import show_date
from ledger.views.label.bare import bare_words
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class PrintedLabels:
    """One label run."""

    on: date
    layout: str
    market: str
    count: int
    text_digest: str
    by: str
    run: int
    used: int | None = None  # None until they were counted
    spoiled: int | None = None
    returned: int | None = None
    approved: str | None = None  # by whom, on which day
    specimen: int | None = None
    destroyed: int | None = None  # of the returned; the rest of them is kept
    became: str = ""  # the same in words


def _came_back(one: PrintedLabels) -> str:
    gone = f", {one.destroyed} destroyed" if one.destroyed else ""
    return "" if one.returned is None else f"{one.returned}{gone}"


@dataclass(frozen=True)
class Labels(Section):
    """The print runs in their order."""

    title = "Labels printed"
    labels: tuple[PrintedLabels, ...]
    first_supplies: tuple[FirstSupplied, ...] = ()
    without_label: tuple[str, ...] = ()  # where its product is sold so, and how many of these may go there alone

    def paper(self, _: Head) -> Pieces:
        """Issued = used + specimen + spoiled + returned; a run that was not counted yet says so."""

        def counted(number: int | None) -> str:
            return "" if number is None else str(number)

        table = grid(
            self.labels,
            Column("run", lambda one: str(one.run), 0.05, right=True),
            Column("on", lambda one: show_date(one.on), 0.12),
            Column("market", lambda one: one.market, 0.08),
            Column("layout", lambda one: one.layout, 0.1),
            Column("issued", lambda one: str(one.count), 0.07, right=True),
            Column("used", lambda one: counted(one.used) or "not counted", 0.09, right=True),
            Column("specimen", lambda one: counted(one.specimen), 0.09, right=True),
            Column("spoiled", lambda one: counted(one.spoiled), 0.08, right=True),
            Column("returned", _came_back, 0.1, right=True),
            Column("digest of the text", lambda one: one.text_digest[:12], 0.12),
            Column("approved by", lambda one: one.approved or "before approval was kept", 0.1),
        )
        said = map(Words, (*(one.words for one in self.first_supplies), *self.without_label))
        return (table if self.labels else Words("None printed yet."), *said)

    def screen(self, _: Head) -> Pieces:
        """Each run in a line."""
        said = [
            Words(f"labels, run {one.run} for {one.market}, {show_date(one.on)}: {one.count} issued = {one.became}.")
            for one in self.labels
        ]
        said += map(Words, (*(one.words for one in self.first_supplies), *self.without_label))
        return (GAP, *said) if said else ()


def labels(read: Sources) -> Labels:
    """Every run printed for the bars, with who approved its text."""
    lot = read.batch.yield_lot_id
    if not lot:
        return Labels(())
    known, printed = approvals(read.rows, lot), runs(read.rows, lot)
    bands: dict[str, tuple[str, str, date]] = {}
    for wrapping in wrapped_in(read.rows, read.batch.id):
        for market in {run.market for run in printed}:
            if found := band_approved(read.rows, wrapping.id, market):
                bands[market] = (wrapping.code, *found[1:])
    return Labels(
        tuple(
            PrintedLabels(
                on=run.on,
                layout=run.layout,
                market=run.market,
                count=run.count,
                text_digest=run.text_digest,
                by=run.by,
                run=run.number,
                used=run.used,
                spoiled=run.spoiled,
                returned=run.returned,
                approved=_approval(known.get((run.market, run.text_digest)), bands.get(run.market)),
                specimen=run.specimen,
                destroyed=run.destroyed,
                became=run.became,
            )
            for run in printed
        ),
        first_supplies(read.rows, lot),
        bare_words(read.rows, read.batch, on=None),
    )


def _approval(text: tuple[str, date] | None, band: tuple[str, str, date] | None) -> str | None:
    """Who approved that very text, else who approved the bands that the bars are in."""
    if text:
        return f"{text[0]}, {show_date(text[1])}"
    return f"{band[1]}, {show_date(band[2])}, on the band {band[0]}" if band else None
