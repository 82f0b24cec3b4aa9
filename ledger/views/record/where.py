"""Where the bars of a batch are and where they went, as its record shows it."""

from dataclasses import dataclass
from datetime import date

from ledger.rows.bars import BackOnSale, back_on_sale, bar_counts
from ledger.rows.people import customer_list
from ledger.units.dates import show_date
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class WhereBars:
    """How many bars are or went where; `left` tells those no longer in our hands."""

    where: str  # "on hand", "at a stall", "at a shop", "retained", "returned", "sold", "dispatched", "given", "wasted"
    detail: str
    on: date | None
    count: int
    left: bool


@dataclass(frozen=True)
class Where(Section):
    """The bars by place and by way, and what came back and was put on sale again."""

    title = "Where the bars are, and where they went"
    whereabouts: tuple[WhereBars, ...]
    back_on_sale: tuple[BackOnSale, ...] = ()  # once on the returns shelf; counted wherever they are since

    def paper(self, _: Head) -> Pieces:
        """Each place and each way with its bars."""
        table = grid(
            self.whereabouts,
            Column("bars", lambda one: str(one.count), 0.07, right=True, bold=True),
            Column("where", _said, 0.22),
            Column("place, customer or reason", lambda one: one.detail if one.detail != one.where else "", 0.51),
            Column("on", lambda one: show_date(one.on) if one.on else "", 0.2),
        )
        return (table if self.whereabouts else Words("No bars yet."), *self._back())

    def screen(self, _: Head) -> Pieces:
        """Likewise."""
        table = grid(
            self.whereabouts,
            Column("bars", lambda one: str(one.count), right=True),
            Column("where", _said),
            Column("", lambda one: one.detail),
            Column("on", lambda one: show_date(one.on) if one.on else ""),
        )
        return (*((GAP, table) if self.whereabouts else ()), *self._back())

    def _back(self) -> Pieces:
        return tuple(Words(f"{one.words}.", wrapped=False) for one in self.back_on_sale)


def _said(one: WhereBars) -> str:
    return "came back" if one.where == "returned" and one.left else one.where


def where(read: Sources) -> Where:
    """Where the bars are; of bulk it is told with its lot."""
    lots = [read.batch.yield_lot_id] if read.batch.yield_lot_id else []
    counts = bar_counts(read.rows, lots if read.batch.soap else [])
    customers = customer_list(read.rows) if any(one.customer_id is not None for one in counts) else ()
    names = {card.id: card.name for card in customers}
    return Where(
        tuple(
            WhereBars(
                one.where,
                one.detail if one.customer_id is None else names[one.customer_id],
                one.on,
                one.count,
                one.left,
            )
            for one in counts
        ),
        back_on_sale(read.rows, lots),
    )
