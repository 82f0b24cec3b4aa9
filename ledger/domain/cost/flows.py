"""What every lot cost, shared over whatever happened to it, through every batch, to the minor unit.

What goes into a lot or a batch comes out of it or is still in it: nothing is made and nothing is lost on the way, on
whatever day one looks. What is not known, and whatever it flows into, is left out of all of it and named.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from ledger.units.money import share_out
from ledger.units.words import Way


class Happened(NamedTuple):
    """One movement of a lot that counts: so much came, or left where it is below zero; a change of place is none."""

    id: int
    on: str  # the day, as it is stored
    quantity: int
    way: Way
    batch_id: int | None


class CostLot(NamedTuple):
    """One lot, with what bears on who bears its cost."""

    id: int
    batch_id: int | None  # the batch that gave it
    cost_minor: int | None  # of a bought one, with its carriage; None: not known
    wrapping: bool = False  # goes on the bars alone
    beside: bool = False  # offcuts, beside what its batch was made for
    mass_mg: int = 0  # of bars at the cut, all of them, and of offcuts; 0: not weighed
    bars: bool = False
    rejected: bool = False  # of bars: those still here


class CostBatch(NamedTuple):
    """One batch, with what it costs itself, beside what goes into it."""

    id: int
    own_minor: int = 0


class Shares(NamedTuple):
    """What each movement took of a lot's cost (below zero: brought back), and what is still in the lot."""

    by_movement: Mapping[int, int]
    left: int


class Flows(NamedTuple):
    """How costs went: by lot and by batch; a lot whose cost is not wholly known is in none but `unknown`."""

    lots: Mapping[int, Shares]
    cost: Mapping[int, int]  # by lot: of the whole lot
    into: Mapping[int, int]  # by batch: what went in, as far as it is known, and what it costs itself
    unknown: frozenset[int]  # lots
    tainted: frozenset[int]  # batches into which something of unknown cost went


def spread(cost_minor: int, moves: Sequence[Happened], *, unloaded: int = 0) -> Shares:
    """Share a lot's cost over its movements, by the day, and on one day what came before what left.

    Cumulative rounding, half up, so that a lot used up has given out its cost exactly. What a count finds beyond the
    book takes back first what earlier counts took off; what is still more came without a cost, so that from then on the
    rest costs less each, and nothing that left before does. `unloaded` pieces of bars bear nothing: those thrown away,
    and those rejected that are still here.
    """
    shares: dict[int, int] = {}
    if not cost_minor:
        return Shares(shares, 0)
    base, whole, used, off, spent = cost_minor, -unloaded, 0, 0, 0
    for one in moves:
        quantity, found = one.quantity, 0
        if quantity > 0 and one.way in ("received", "yielded"):
            whole += quantity
            continue
        if one.way == "wasted" and unloaded:
            continue
        if one.way == "counted":
            found = max(quantity - off, 0)
            off = max(off - quantity, 0)
        before, used = used, used - (quantity - found)
        share = _up_to(base, whole, used) - _up_to(base, whole, before)
        if share:
            shares[one.id] = share
            spent += share
        if found:
            base, whole, used = cost_minor - spent, whole - used + found, 0
    return Shares(shares, cost_minor - spent)


def _up_to(cost: int, whole: int, used: int) -> int:
    return (2 * cost * used + whole) // (2 * whole) if whole > 0 else 0


class Bars(NamedTuple):
    """What became of the bars of a lot, in pieces."""

    made: int  # with what a count found beyond the book
    wasted: int
    reworked: int
    rejected: int  # still here, and may not leave

    @property
    def good(self) -> int:
        """Neither thrown away nor reworked nor rejected."""
        return self.made - self.wasted - self.reworked - self.rejected


def bars_of(lot: CostLot, moves: Iterable[Happened]) -> Bars:
    """What became of the bars of a lot."""
    by: dict[str, int] = defaultdict(int)
    for one in moves:
        by[one.way] += one.quantity
    here = max(sum(by.values()), 0) if lot.rejected else 0
    made = by["yielded"] + by["received"] + max(by["counted"], 0)
    return Bars(made, -by["wasted"], -by["consumed"], here)


def bears_nothing(lot: CostLot, moves: Sequence[Happened], *, load_the_good: bool) -> int:
    """How many bars of a lot bear nothing of its cost, since others bear it for them.

    Those thrown away, while others are left to bear it; those rejected that are still here, while there are good ones.
    """
    if not (lot.bars and load_the_good):
        return 0
    bars = bars_of(lot, moves)
    nothing = bars.wasted + (bars.rejected if bars.good > 0 else 0)
    came = sum(one.quantity for one in moves if one.quantity > 0 and one.way in ("received", "yielded"))
    held = came - nothing
    if held <= 0:
        return 0
    for one in moves:  # more left before a count found more: then each bar bears its own
        if one.way not in ("received", "yielded", "wasted"):
            held += one.quantity
            if held < 0:
                return 0
    return nothing


def between(total_minor: int, wrapping_minor: int, lots: Sequence[CostLot]) -> list[int]:
    """What each lot that a batch gave bears of its cost: by mass, but for the wrapping, which is on the bars.

    Where the bars were not weighed, or there is nothing beside them, what the batch was made for bears it all.
    """
    main = [one for one in lots if not one.beside]
    if not main:
        return share_out(total_minor, [1] * len(lots))
    if len(lots) > 1 and main[0].bars and main[0].mass_mg:
        shares = share_out(total_minor - wrapping_minor, [one.mass_mg for one in lots])
        return [share + (wrapping_minor if one is main[0] else 0) for share, one in zip(shares, lots, strict=True)]
    return [total_minor if one is main[0] else 0 for one in lots]


def flow(
    lots: Mapping[int, CostLot],
    moves: Mapping[int, Sequence[Happened]],
    batches: Mapping[int, CostBatch],
    *,
    load_the_good: bool = True,
) -> Flows:
    """Work out what everything cost, lot by lot and batch by batch, each once what went before it is known.

    `moves` are those of each lot, in the order that `spread` takes.
    """
    takers: dict[int, dict[int, list[Happened]]] = {}
    waits: dict[int, int] = defaultdict(int)
    for number in lots:
        by_batch: dict[int, list[Happened]] = {}
        for one in moves.get(number, ()):
            if one.way == "consumed" and one.batch_id is not None:
                by_batch.setdefault(one.batch_id, []).append(one)
        if by_batch:
            takers[number] = by_batch
            for batch in by_batch:
                waits[batch] += 1
    gave: dict[int, list[CostLot]] = defaultdict(list)
    for lot in lots.values():
        if lot.batch_id is not None:
            gave[lot.batch_id].append(lot)
    into = {number: one.own_minor for number, one in batches.items()}
    wrapping: dict[int, int] = defaultdict(int)
    cost: dict[int, int] = {}
    shared: dict[int, Shares] = {}
    tainted: set[int] = set()

    def give(batch: int) -> Iterable[int]:
        """The lots of a batch into which all has gone bear its cost."""
        given = gave.get(batch, ())
        if given and batch not in tainted:
            for lot, share in zip(given, between(into.get(batch, 0), wrapping[batch], given), strict=True):
                cost[lot.id] = share
        return [lot.id for lot in given]

    ready = [number for number, lot in lots.items() if lot.batch_id is None]
    for number in ready:
        if (bought := lots[number].cost_minor) is not None:
            cost[number] = bought
    for batch in {*gave, *batches} - waits.keys():
        ready += give(batch)
    while ready:
        number = ready.pop()
        lot, happened = lots[number], moves.get(number, ())
        if (whole := cost.get(number)) is not None:
            unloaded = bears_nothing(lot, happened, load_the_good=load_the_good) if lot.bars else 0
            shared[number] = spread(whole, happened, unloaded=unloaded)
        for batch, taken in takers.get(number, {}).items():
            if whole is None:
                if sum(one.quantity for one in taken) < 0:
                    tainted.add(batch)
            else:
                share = sum(shared[number].by_movement.get(one.id, 0) for one in taken)
                into[batch] = into.get(batch, 0) + share
                if lot.wrapping:
                    wrapping[batch] += share
            waits[batch] -= 1
            if not waits[batch]:
                ready += give(batch)
    return Flows(shared, cost, into, frozenset(lots.keys() - shared.keys()), frozenset(tainted))
