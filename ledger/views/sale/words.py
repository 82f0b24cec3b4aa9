"""What moved, in full: bars, product, batch code and price."""

from collections.abc import Sequence
from typing import NamedTuple

from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.people import CustomerCard
from ledger.units.money import show_money
from ledger.units.wording import count
from ledger.units.words import PaidBy


class BarsMoved(NamedTuple):
    """Bars of one lot, and what they brought together; None where that was never told."""

    lot_id: int
    bars: int
    amount_minor: int | None = None


def in_full(rows: Rows, moved: Sequence[BarsMoved], currency: str) -> str:
    """'6 bars of Plain Bar 26-118-0 at 4.50 EUR, 2 bars of Rose 26-117-2'."""
    lots = lots_by_id(rows, {one.lot_id for one in moved})
    return ", ".join(
        f"{count(one.bars, 'bar')} of {lots[one.lot_id].material} {lots[one.lot_id].code}{price_told(one, currency)}"
        for one in moved
    )


def price_told(moved: BarsMoved, currency: str) -> str:
    """' at 4.50 EUR', or ' for 26.00 EUR together' where bars do not share it evenly; nothing where none was told."""
    if moved.amount_minor is None or not moved.bars:
        return ""
    each, over = divmod(moved.amount_minor, moved.bars)
    return f" for {show_money(moved.amount_minor, currency)} together" if over else f" at {show_money(each, currency)}"


def whom_kept(card: CustomerCard) -> str:
    """How a sentence that is kept names a customer: a shop by its name, a person by the short name alone."""
    return card.name if card.kind == "shop" else card.code


def by_way(way: PaidBy) -> str:
    """How money went, in words."""
    return {"cash": "in cash", "card": "by card", "bank": "through the bank", "other": "another way"}[way]
