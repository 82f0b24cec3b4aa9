"""What a batch is and where it stands: the head of its record, which every section of it is told."""

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from ledger.rows.settings import PrintedFrom, printed_from
from ledger.units.dates import show_date, show_moment
from ledger.units.words import Process, Units
from ledger.views.record.pieces import Facts, Pieces, Words
from ledger.views.record.sources import Sources

_FINAL = ("released", "rejected", "discarded", "strained", "combined", "blended", "divided", "reworked")


@dataclass(frozen=True)
class Head:
    """The batch itself, its days and its bars."""

    business: str
    units: Units
    batch_code: str
    product: str
    recipe_code: str | None
    recipe_version: int | None
    process: Process
    status: str
    draft: bool  # not yet released (or rejected): marked across the head
    as_known: bool  # as an earlier entry knew it, not as it stands
    planned_on: date
    made_on: date | None
    cut_on: date | None
    ready_on: date | None
    usable_from: date | None
    bars_planned: int | None
    bars_cut: int | None
    printed_from: PrintedFrom

    def paper(self) -> Facts:
        """What stands at the top of the first page."""
        recipe = f"{self.recipe_code}, version {self.recipe_version}" if self.recipe_code else "none (combined lots)"
        usable = f"{_day(self.usable_from)} (not yet steady in weight)" if self.usable_from else ""
        return Facts(
            (
                ("status", self.status),
                ("made on", _day(self.made_on) or "not yet"),
                ("cut on" if self.bars_planned else "taken on", _day(self.cut_on)),
                ("ready on", _day(self.ready_on)),
                ("usable from", usable),
                ("recipe", recipe),
                ("process", self.process),
                ("planned for", _day(self.planned_on)),
            )
        )

    def screen(self) -> Pieces:
        """The answer first, then its days."""
        found = [f"Batch {self.batch_code}, {self.product}: {self.status}."]
        if self.as_known:
            written = show_moment(self.printed_from.recorded_at)
            found.append(f"This is what was known at entry {self.printed_from.entry}, written {written}.")
        facts = Facts(
            (
                ("recipe", f"{self.recipe_code}, version {self.recipe_version}" if self.recipe_code else ""),
                ("made", _day(self.made_on)),
                ("cut", f"{_day(self.cut_on)}, {self.bars_cut} bars" if self.cut_on and self.bars_cut else ""),
                ("ready", _day(self.ready_on)),
                ("usable from", _day(self.usable_from)),
            )
        )
        return (*(Words(one, first="", wrapped=False) for one in found), facts)


class Section:
    """One section of the record: its fields are keys of the JSON, and it says what is shown of them."""

    title: ClassVar[str]

    def paper(self, _: Head) -> Pieces:
        """What is printed under its title; nothing: not even that."""
        return ()

    def screen(self, _: Head) -> Pieces:
        """What is said of it on the screen."""
        return ()


def head(read: Sources, bars_cut: int | None, *, program: str, as_known: bool) -> Head:
    """What the batch is."""
    batch = read.batch
    return Head(
        business=read.own.business,
        units=read.own.units,
        batch_code=batch.code,
        product=batch.product,
        recipe_code=batch.recipe_code,
        recipe_version=batch.recipe_version,
        process=batch.process,
        status=batch.status,
        draft=batch.status not in _FINAL,
        as_known=as_known,
        planned_on=batch.planned_on,
        made_on=batch.made_on,
        cut_on=batch.yielded_on,
        ready_on=batch.ready_on,
        usable_from=batch.usable_from,
        bars_planned=batch.bars_planned,
        bars_cut=bars_cut,
        printed_from=printed_from(read.rows, program),
    )


def _day(value: date | None) -> str:
    return show_date(value) if value else ""
