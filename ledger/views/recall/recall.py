"""The answer to a supplier's call or to the code on a bar: which batches, which bars, where each is, whom to call."""

from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.rows.bars import BackOnSale
from ledger.rows.settings import PrintedFrom
from ledger.units.words import Units


class NamedLot(NamedTuple):
    """One lot the notice is about."""

    lot_code: str
    material: str
    supplier: str | None
    supplier_lot: str | None
    received_on: date
    received: int  # mg or pieces
    on_hand: int
    pieces: bool
    status: str


class ReachedBatch(NamedTuple):
    """One batch that used a named lot, directly or through others, or one asked for by the code on its bars."""

    batch_code: str
    product: str
    made_on: date
    status: str
    through: tuple[str, ...]  # lot and batch codes from what was named to this batch, in order, each once
    used: int | None  # mg (or pieces) of the named or in-between lot that went in; None: it was asked for itself
    pieces: bool
    bars_made: int
    yields_bars: bool


@dataclass(frozen=True)
class BarsAt:
    """Bars of one batch at one place or gone one way."""

    batch_code: str
    product: str
    where: str  # "on hand", "at a stall", "retained", "returned", "sold", "dispatched", "given", "wasted",
    # "reworked", "came back", "missing at a count"
    detail: str  # the place, stall, customer or reason
    on: date | None
    count: int
    left: bool
    contact: str | None


class BulkAt(NamedTuple):
    """Loose material reached (infused oil, offcuts, a combined drum) that is still here."""

    lot_code: str
    material: str
    place: str
    on_hand: int
    pieces: bool
    status: str


class ToCall(NamedTuple):
    """Someone who received bars that are reached, or complained of one."""

    name: str
    phone: str | None
    email: str | None
    address: str | None
    bars: int  # none where they complained: their bar is counted where it was sold
    batches: tuple[str, ...]
    last_on: date
    complaint: int | None = None  # its number


class Totals(NamedTuple):
    """Bars made and where they are; `unexplained` is made less all the rest and is always shown."""

    made: int
    on_hand: int
    at_stall: int
    retained: int
    returned: int  # in our hands again, on the returns shelf
    sold: int
    dispatched: int  # less what came back
    given: int
    wasted: int
    reworked: int  # booked back in as mass for a rebatch
    unexplained: int


class CannotBeExcluded(NamedTuple):
    """Something the records cannot rule out, and why."""

    what: str
    why: str


@dataclass(frozen=True)
class RecallAnswer:
    """The whole answer, at one moment of the ledger."""

    business: str
    units: Units
    asked: tuple[str, ...]  # the numbers or the codes as they were given
    lots: tuple[NamedLot, ...]  # none where bars were asked for by their code
    batches: tuple[ReachedBatch, ...]
    bars: tuple[BarsAt, ...]
    bulk: tuple[BulkAt, ...]
    call: tuple[ToCall, ...]
    totals: Totals
    cannot_exclude: tuple[CannotBeExcluded, ...]
    exercise: bool
    held: bool  # everything on hand was put on hold with this answer
    printed_from: PrintedFrom
    bars_of: tuple[str, ...] = ()  # the batch codes asked for, as read from bars
    back_on_sale: tuple[BackOnSale, ...] = ()  # once on the returns shelf; counted wherever they are since
    stoppable: tuple[str, ...] = ()  # lots of it of which something is here, neither on hold nor rejected
    stopped: tuple[str, ...] = ()  # how what is here is stopped: "on hold", "rejected"; empty where nothing is here
