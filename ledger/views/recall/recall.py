"""The answer to a supplier's call or to the code on a bar: which batches, which bars, where each is, whom to call."""

from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.rows.bars import BackOnSale
from ledger.rows.settings import PrintedFrom
from ledger.units.words import Units
from ledger.views.recall.recall_assumed import AssumedBars


class NamedLot(NamedTuple):
    """One lot the notice is about."""

    lot_code: str
    material: str
    supplier: str | None
    supplier_lot: str | None
    received_on: date
    received: int  # mg or pieces; = into batches + on hand + returned + thrown away + unexplained
    on_hand: int
    pieces: bool
    status: str
    into_batches: int = 0
    returned: int = 0
    wasted: int = 0
    unexplained: int = 0
    within: int = 0  # mg that the scale alone may leave unexplained: half a step for each time it was read


class ReachedBatch(NamedTuple):
    """One batch that used a named lot, directly or through others, or one asked for by the code on its bars."""

    batch_code: str
    product: str
    made_on: date
    status: str
    first: str  # the code of what was named that the shortest way to it begins with
    last: str  # the code of what it was made of that is the last on that way; its own where it was asked for itself
    steps: int  # from code to code on that way
    used: int | None  # mg of what was named that is in it, or pieces of a wrapping; None: it was asked for itself
    pieces: bool
    bars_made: int
    yields_bars: bool
    after: str | None = None  # the batch before it on that way
    share_ppm: int | None = None  # of all that went in; None where that is not known, or for a wrapping
    in_a_bar_ug: int | None = None  # micrograms of what was named in one bar, if all was well mixed
    at_most: bool = False  # behind an infusion: all that was steeped may have passed into the oil, or none


@dataclass(frozen=True)
class BarsAt:
    """Bars of one batch at one place or gone one way."""

    batch_code: str
    product: str
    where: str  # "on hand", "at a stall", "at a shop", "retained", "returned", "sold", "dispatched", "given",
    # "wasted", "reworked", "came back", "missing at a count"
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
    private: bool = False  # a person, not a shop
    possible: bool = False  # the batch of the bar complained of is not known
    customer_id: int | None = None  # where it is one on the books


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
    at_shop: int = 0  # hers, on sale or return


class Difference(NamedTuple):
    """A batch of which bars are not all accounted for, or more than were made."""

    batch_code: str
    made: int
    known: int  # here, and gone in a way that is told
    unexplained: int


class SoldAt(NamedTuple):
    """Where bars were sold to nobody known by name, for a notice there."""

    place: str
    bars: int
    first_on: date
    last_on: date
    batches: tuple[str, ...]


class Holdable(NamedTuple):
    """One lot of which something is here, neither on hold nor rejected."""

    code: str
    what: str
    quantity: int  # mg or pieces
    pieces: bool
    bars: bool


class LookNext(NamedTuple):
    """A batch that is in no figure of the answer, and the lot it shares that is in the fewest other batches."""

    batch_code: str
    product: str
    lot_code: str
    material: str
    shared_by: int  # batches of bars that this lot is in, those asked about among them


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
    stoppable: tuple[Holdable, ...] = ()
    stopped: tuple[str, ...] = ()  # how what is here is stopped: "on hold", "rejected"; empty where nothing is here
    differences: tuple[Difference, ...] = ()
    notices: tuple[SoldAt, ...] = ()
    look_next: tuple[LookNext, ...] = ()  # in no figure of the answer
    labels_of: tuple[str, ...] = ()  # the batch codes of which the labels alone are asked for
    may_be: tuple[AssumedBars, ...] = ()  # booked on other batches; in no figure of the answer
