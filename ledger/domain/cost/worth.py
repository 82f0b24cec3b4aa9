"""What all of it is worth on a day: what was paid for it, and where that is now, to the minor unit."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Literal, NamedTuple

from ledger.domain.cost.flows import CostLot, Flows, Happened, flow, ways_of
from ledger.domain.cost.working import Minutes, OwnCost, Rate, Worked, own_cost, worked
from ledger.units.money import share_out
from ledger.units.words import MaterialKind, PlaceKind, Process, Way

Account = Literal[
    "materials", "made ahead", "offcuts", "in work", "bars here", "bars rejected", "retained samples", "returns shelf",
    "bars at stalls", "bars at shops", "sold", "own use", "given away", "thrown away", "sent back", "counted off",
    "given up", "outside",
]  # fmt: skip
# What a movement out of a lot is booked to; what goes into a batch is in the batch.
_GONE: Mapping[Way, Account] = {
    "sold": "sold",
    "dispatched": "sold",
    "returned": "sold",  # takes back what was sold
    "given": "given away",
    "wasted": "thrown away",
    "counted": "counted off",
}
_BARS: Mapping[PlaceKind, Account] = {
    "workshop": "bars here",
    "stall": "bars at stalls",
    "retained": "retained samples",
    "returns": "returns shelf",
    "consignment": "bars at shops",
}


class LotFacts(NamedTuple):
    """One lot, as far as its cost goes."""

    id: int
    code: str
    material: str
    kind: MaterialKind
    batch_id: int | None
    beside: bool  # not what its batch was made for
    cost_minor: int | None
    mass_mg: int | None
    rejected: bool


class BatchFacts(NamedTuple):
    """One batch, as far as its cost goes."""

    id: int
    code: str
    process: Process
    planned_on: date
    discarded: bool
    minutes: Minutes


class CostFacts(NamedTuple):
    """All that costs go by, up to a day; `moves` by lot, in their order, `places` what stands where of a lot."""

    lots: Mapping[int, LotFacts]
    moves: Mapping[int, Sequence[Happened]]
    places: Mapping[int, Sequence[tuple[PlaceKind, int]]]
    batches: Mapping[int, BatchFacts]
    rates: Sequence[Rate]
    hour_minor: int | None  # before the first rate for an hour
    load_the_good: bool
    apart: Mapping[int, Account]  # movements that are booked to another account than their way says


class Costs(NamedTuple):
    """How the costs of facts went: materials, and apart from them work and what each batch bears of the house."""

    materials: Flows
    own: Flows
    by_batch: Mapping[int, OwnCost]
    worked: Mapping[int, Worked]
    begun: Mapping[int, date]  # by batch


def costs(facts: CostFacts) -> Costs:
    """Work all of it out."""
    lots = cost_lots(facts)
    begun = _begun(facts)
    work = {
        one.id: worked(one.minutes if one.id in begun else one.minutes._replace(recipe=None))
        for one in facts.batches.values()
    }
    own = {
        one.id: own_cost(
            work[one.id],
            facts.rates,
            day=begun.get(one.id, one.planned_on),
            process=one.process,
            begun=one.id in begun,
            hour_minor=facts.hour_minor,
        )
        for one in facts.batches.values()
    }
    ways = ways_of(lots, facts.moves, load_the_good=facts.load_the_good)
    bought = {one.id: one.cost_minor for one in facts.lots.values() if one.batch_id is None}
    materials = flow(ways, bought, dict.fromkeys(facts.batches, 0))
    working = flow(ways, dict.fromkeys(bought, 0), {number: one.total_minor for number, one in own.items()})
    return Costs(materials, working, own, work, begun)


def cost_lots(facts: CostFacts) -> dict[int, CostLot]:
    """Every lot with what bears on who bears its cost."""
    return {one.id: _cost_lot(one, facts.moves.get(one.id, ())) for one in facts.lots.values()}


def _cost_lot(one: LotFacts, moves: Sequence[Happened]) -> CostLot:
    mass = one.mass_mg or 0
    if one.beside:
        mass = sum(move.quantity for move in moves if move.way == "yielded")
    wrapping, bars = one.kind == "packaging", one.kind == "soap"
    return CostLot(one.id, one.batch_id, wrapping, one.beside, mass, bars, one.rejected)


def _begun(facts: CostFacts) -> dict[int, date]:
    """The day the first material of a batch was weighed, wrapping apart."""
    first: dict[int, str] = {}
    for number, moves in facts.moves.items():
        if number not in facts.lots or facts.lots[number].kind == "packaging":
            continue
        for one in moves:
            if one.way == "consumed" and one.batch_id is not None:
                first[one.batch_id] = min(first.get(one.batch_id, one.on), one.on)
    return {batch: date.fromisoformat(on) for batch, on in first.items()}


class Statement(NamedTuple):
    """What was put in, and in which account it is; they differ by nothing, or something is wrong."""

    put_in_minor: int
    accounts: Mapping[Account, int]

    @property
    def differs_minor(self) -> int:
        """What was put in and is nowhere."""
        return self.put_in_minor - sum(self.accounts.values())


def statement(facts: CostFacts, flows: Flows, put_in_minor: int) -> Statement:
    """Where everything is that was put in; the known part of what holds something of unknown cost is outside."""
    found: dict[Account, int] = defaultdict(int)
    for number, shares in flows.lots.items():
        for one in facts.moves.get(number, ()):
            if (share := shares.by_movement.get(one.id)) and (account := _GONE.get(one.way)):
                found[facts.apart.get(one.id, account)] += share
            elif share and one.batch_id is None:
                found["outside"] += share  # consumed by nothing: no soapledger writes so
        if shares.left:
            for account, share in _here(facts.lots[number], facts.places.get(number, ()), shares.left):
                found[account] += share
    gave: dict[int, bool] = {}
    for lot in facts.lots.values():
        if lot.batch_id is not None:
            gave[lot.batch_id] = gave.get(lot.batch_id, True) and lot.id in flows.cost
    for number, minor in flows.into.items():
        if number in flows.tainted or not gave.get(number, True):
            found["outside"] += minor
        elif number not in gave:
            batch = facts.batches.get(number)
            found["given up" if batch and batch.discarded else "in work"] += minor
    return Statement(put_in_minor, found)


def used_up_and_not_nothing(facts: CostFacts, flows: Flows) -> list[LotFacts]:
    """Lots of which nothing is left and which still hold some of their cost; there are none in a sound ledger."""
    return [
        facts.lots[number]
        for number, shares in flows.lots.items()
        if shares.left and not sum(one.quantity for one in facts.moves.get(number, ()))
    ]


def _here(lot: LotFacts, places: Sequence[tuple[PlaceKind, int]], left: int) -> Iterable[tuple[Account, int]]:
    """In which accounts what is left in a lot is."""
    if lot.kind != "soap":
        account: Account = "offcuts" if lot.kind == "rework" else "materials" if lot.batch_id is None else "made ahead"
        return [(account, left)]
    if lot.rejected or not places:
        return [("bars rejected" if lot.rejected else "bars here", left)]
    shares = share_out(left, [held for _, held in places])
    return [(_BARS[kind], share) for (kind, _), share in zip(places, shares, strict=True)]
