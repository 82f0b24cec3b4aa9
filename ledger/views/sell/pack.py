"""What to pack for a stall: what sold there, what is ready, what is promised, and how many to take."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.sell.assumed import first_out
from ledger.domain.sell.packing import DAYS, proposal
from ledger.rows.opened import Rows
from ledger.rows.sell.product import products
from ledger.rows.sell.ready import promised
from ledger.rows.sell.stall import sold_at
from ledger.rows.settings import PrintedFrom, printed_from, settings
from ledger.views.sell.ready import Ready, ready
from ledger.views.stock.stall import stall_by_name


@dataclass(frozen=True)
class PackBatch:
    """Bars of one batch that are ready, and how many of them to take, the oldest batch first."""

    code: str
    made_on: date
    best_before: date | None
    bars: int
    take: int


@dataclass(frozen=True)
class PackProduct:
    """One product of the list."""

    code: str
    product: str
    sold: tuple[int, ...]  # on each of the last days there, the latest first
    ready: int
    promised: int
    take: int
    batches: tuple[PackBatch, ...]


@dataclass(frozen=True)
class PackList:
    """What to pack for a stall on a day."""

    stall: str
    code: str
    on: date
    days: tuple[date, ...]  # the last days there, the latest first
    products: tuple[PackProduct, ...]
    business: str
    printed_from: PrintedFrom


def pack_list(rows: Rows, stall: str, *, on: date, program: str) -> PackList:
    """What to pack for a stall; products that are neither ready nor ever sold there lately are left out."""
    place = stall_by_name(rows, stall)
    there = sold_at(rows, place.id, before=on, days=DAYS)
    days = sorted({one.on for one in there}, reverse=True)
    sold = {(one.material_id, one.on): one.bars for one in there}
    standing = ready(rows, on)
    waiting = promised(rows)
    found = []
    for product in products(rows):
        lots = standing.get(product.material_id, [])
        past = tuple(sold.get((product.material_id, day), 0) for day in days)
        if not lots and not any(past):
            continue
        here = sum(lot.bars for lot in lots)
        kept = waiting.get(product.recipe_id, 0)
        take = proposal(past, here, kept)
        found.append(PackProduct(product.code, product.name, past, here, kept, take, _batches(lots, take)))
    business = settings(rows).business
    return PackList(place.name, place.code, on, tuple(days), tuple(found), business, printed_from(rows, program))


def _batches(lots: list[Ready], take: int) -> tuple[PackBatch, ...]:
    taken = first_out(take, {lot.lot_id: lot.bars for lot in lots})
    return tuple(PackBatch(one.code, one.made_on, one.best_before, one.bars, taken.get(one.lot_id, 0)) for one in lots)
