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
    wrapping: bool = False  # goes on the bars alone
    beside: bool = False  # offcuts, beside what its batch was made for
    mass_mg: int = 0  # of bars at the cut, all of them, and of offcuts; 0: not weighed
    bars: bool = False
    rejected: bool = False  # of bars: those still here


class Shares(NamedTuple):
    """What each movement took of a lot's cost (below zero: brought back), and what is still in the lot."""

    by_movement: Mapping[int, int]
    left: int


class Flows(NamedTuple):
    """How costs went: by lot and by batch; a lot whose cost is not wholly known is in none."""

    lots: Mapping[int, Shares]
    cost: Mapping[int, int]  # by lot: of the whole lot
    into: Mapping[int, int]  # by batch: what went in, as far as it is known, and what it costs itself
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


class Ways(NamedTuple):
    """How costs can go from lot to batch and from batch to lot; laid once, for whatever cost is to go there."""

    lots: Mapping[int, CostLot]
    moves: Mapping[int, Sequence[Happened]]  # of each lot, in the order that `spread` takes
    takers: Mapping[int, Mapping[int, Sequence[Happened]]]  # by lot, then by the batch that took of it
    gave: Mapping[int, Sequence[CostLot]]  # by batch
    unloaded: Mapping[int, int]  # bars of a lot that bear nothing


def ways_of(
    lots: Mapping[int, CostLot], moves: Mapping[int, Sequence[Happened]], *, load_the_good: bool = True
) -> Ways:
    """Lay the ways between lots and batches; `moves` as `Ways` has them."""
    takers: dict[int, dict[int, list[Happened]]] = {}
    gave: dict[int, list[CostLot]] = defaultdict(list)
    unloaded: dict[int, int] = {}
    for number, lot in lots.items():
        by_batch: dict[int, list[Happened]] = {}
        for one in moves.get(number, ()):
            if one.way == "consumed" and one.batch_id is not None:
                by_batch.setdefault(one.batch_id, []).append(one)
        if by_batch:
            takers[number] = by_batch
        if lot.batch_id is not None:
            gave[lot.batch_id].append(lot)
        if lot.bars and (nothing := bears_nothing(lot, moves.get(number, ()), load_the_good=load_the_good)):
            unloaded[number] = nothing
    return Ways(lots, moves, takers, gave, unloaded)


def flow(ways: Ways, bought: Mapping[int, int | None], own: Mapping[int, int]) -> Flows:
    """Work out what everything cost, lot by lot and batch by batch, each once what went before it is known.

    `bought` says what the lots of suppliers cost, None where nobody knows; `own` what batches cost themselves.
    """
    waits: dict[int, int] = defaultdict(int)
    for by_batch in ways.takers.values():
        for batch in by_batch:
            waits[batch] += 1
    into: dict[int, int] = defaultdict(int, own)
    wrapping: dict[int, int] = defaultdict(int)
    cost = {number: minor for number, minor in bought.items() if minor is not None}
    shared: dict[int, Shares] = {}
    tainted: set[int] = set()

    def give(batch: int) -> Iterable[int]:
        """The lots of a batch into which all has gone bear its cost."""
        given = ways.gave.get(batch, ())
        if given and batch not in tainted:
            shares = between(into[batch], wrapping[batch], given)
            cost.update((lot.id, share) for lot, share in zip(given, shares, strict=True))
        return [lot.id for lot in given]

    ready = [*bought]
    for batch in ways.gave.keys() - waits.keys():
        ready += give(batch)
    while ready:
        number = ready.pop()
        if (whole := cost.get(number)) is not None:
            unloaded = ways.unloaded.get(number, 0)
            shared[number] = spread(whole, ways.moves.get(number, ()), unloaded=unloaded)
        for batch, taken in ways.takers.get(number, {}).items():
            if whole is None:
                if sum(one.quantity for one in taken) < 0:
                    tainted.add(batch)
            elif shares := shared[number].by_movement:
                share = sum(shares.get(one.id, 0) for one in taken)
                into[batch] += share
                if ways.lots[number].wrapping:
                    wrapping[batch] += share
            waits[batch] -= 1
            if not waits[batch]:
                ready += give(batch)
    return Flows(shared, cost, dict(into), frozenset(tainted))
