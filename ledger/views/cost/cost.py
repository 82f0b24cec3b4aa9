"""What a batch cost, from the lots that really went in, and what its bars brought."""

from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from ledger.domain.cost.costing import each_bar
from ledger.domain.cost.flows import Bars, CostLot, Shares, bars_of, bears_nothing, between, spread
from ledger.domain.cost.gained import Brought, Charge, OutletSum, by_outlet, gain_each
from ledger.domain.cost.working import Worked
from ledger.domain.cost.worth import CostFacts, Costs, cost_lots, costs
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import lots_by_id, places
from ledger.rows.movement import Taken, batches_behind, taken_into
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.cost import carriage_of, cost_facts, fees_on_sales_of, never_priced, that_count
from ledger.rows.sell.sale import taken_for
from ledger.rows.settings import settings
from ledger.units.words import CarriageBy, UsedAs


@dataclass(frozen=True)
class CostLine:
    """One lot used: its share of the lot's cost, or None where that was never learnt."""

    role: UsedAs
    material: str
    lot_code: str
    quantity: int
    counted: bool
    cost_minor: int | None


@dataclass(frozen=True)
class TakenAt:
    """What bars of the batch brought at one outlet; the fees are those booked with a sale."""

    outlet: str
    bars: int
    taken_minor: int
    returned_minor: int
    tax_minor: int
    fees_minor: int


@dataclass(frozen=True)
class BatchCost:
    """The cost of one batch; `unknown` names the lots whose cost is not known, which the total leaves out."""

    batch_code: str
    product: str
    currency: str
    lines: tuple[CostLine, ...]
    labour_minutes: int
    labour_minor: int | None  # None: no rate for an hour is set
    work: Worked  # where the minutes come from
    overhead_minor: int | None  # None: no rate for a batch is set
    total_minor: int
    to_bars_minor: int  # the total less what the offcuts carry away by mass
    to_offcuts_minor: int
    written_off_minor: int  # borne by bars that were thrown away or rejected, where they do not load the good ones
    good_bars: int  # neither thrown away nor reworked nor rejected
    reworked_bars: int
    rejected_bars: int  # still here
    wasted_bars: int
    per_bar_minor: tuple[int, ...]  # of each good bar and each reworked; with what is written off, what the bars cost
    taken_minor: int  # what was taken for them so far, less what was given back
    by_outlet: tuple[TakenAt, ...]
    sold_bars: int  # less those that came back
    unpriced_bars: int  # sold for nobody knows what
    gain_per_bar_minor: int | None  # None: none was sold, or something of it is not known
    unknown: tuple[str, ...]
    carriage: tuple[tuple[str, CarriageBy], ...]  # lots with a share of carriage in their cost, and by what it is


def batch_cost(rows: Rows, code: str) -> BatchCost:
    """The cost of a batch; raises like `find_batch`."""
    return batch_costs(rows, [find_batch(rows, code)])[0]


def batch_costs(rows: Rows, asked: Collection[BatchRow]) -> tuple[BatchCost, ...]:
    """The costs of several batches: as many statements as for one, however deep what they were made of."""
    coster = _Coster(rows, asked)
    return tuple(coster.batch(one) for one in asked)


class _Sold(NamedTuple):
    """What the bars of a batch brought, outlet by outlet, and what is gained on each."""

    sums: tuple[OutletSum, ...]
    bars: int
    unpriced: int
    gain_minor: int | None


class _Coster:
    """Works costs out of everything behind some batches, which is read at once."""

    def __init__(self, rows: Rows, asked: Collection[BatchRow]) -> None:
        self.currency = settings(rows).currency
        made = that_count(rows, batches_behind(rows, [one.id for one in asked]))
        self.facts: CostFacts = cost_facts(rows, batches=made)
        self.costs: Costs = costs(self.facts)
        self.cost_lots: Mapping[int, CostLot] = cost_lots(self.facts)
        self.taken: dict[int, dict[tuple[int, UsedAs | None], list[Taken]]] = defaultdict(lambda: defaultdict(list))
        for one in taken_into(rows, [one.id for one in asked]):
            self.taken[one.batch_id][one.lot_id, one.role].append(one)
        bars = {one.yield_lot_id for one in asked if one.yield_lot_id is not None and one.soap}
        self.lots = lots_by_id(rows, {lot for lines in self.taken.values() for lot, _ in lines})
        self.carriage = carriage_of(rows, self.lots)
        self.brought: dict[int, list[Brought]] = defaultdict(list)
        for gained in taken_for(rows, bars):
            outlet = (gained.place_id if gained.customer_id is None else None, gained.customer_id)
            self.brought[gained.lot_id].append(Brought(outlet, gained.bars, gained.money_minor, gained.tax_minor))
        self.charges = [
            Charge((one.place_id if one.customer_id is None else None, one.customer_id), one.amount_minor, one.lines)
            for one in fees_on_sales_of(rows, bars)
        ]
        self.unpriced = never_priced(rows, bars)
        self.places = {place.id: place.name for place in places(rows)}
        customers = {outlet[1] for lot in self.brought.values() for outlet, *_ in lot if outlet[1] is not None}
        customers |= {one.outlet[1] for one in self.charges if one.outlet[1] is not None}
        self.customers = {number: one.name for number, one in contacts(rows, sorted(customers)).items()}

    def batch(self, batch: BatchRow) -> BatchCost:
        """The cost of one batch."""
        lines, unknown, materials, more, wrapping = [], [], 0, 0, 0
        for (lot_id, role), taken in self.taken[batch.id].items():
            if (used := sum(one.quantity for one in taken)) <= 0:
                continue
            lot, share = self.lots[lot_id], None
            if lot_id in self.costs.materials.cost:
                of_lot, of_work = (
                    sum(flows.lots[lot_id].by_movement.get(one.id, 0) for one in taken)
                    for flows in (self.costs.materials, self.costs.own)
                )
                share, materials, more = of_lot + of_work, materials + of_lot, more + of_work
                wrapping += of_lot if self.cost_lots[lot_id].wrapping else 0
            else:
                unknown.append(lot.code)
            lines.append(CostLine(role or lot.kind, lot.material, lot.code, used, lot.counted, share))
        own, work = self.costs.by_batch[batch.id], self.costs.worked[batch.id]
        total = materials + more + own.total_minor
        to_bars, to_offcuts = materials, 0
        extra = more + own.total_minor
        given = [one for one in self.cost_lots.values() if one.batch_id == batch.id]
        if len(given) > 1:
            parts = [between(materials, wrapping, given), between(extra, 0, given)]
            to_bars, extra = (sum(m for m, one in zip(part, given, strict=True) if not one.beside) for part in parts)
            to_offcuts = total - to_bars - extra
        bars, wasted_off, sold_cost = self._bars(batch, to_bars, extra)
        sold = self._brought(batch, sold_cost, known=not unknown)
        return BatchCost(
            batch_code=batch.code,
            product=batch.product,
            currency=self.currency,
            lines=tuple(lines),
            labour_minutes=work.minutes,
            labour_minor=own.work_minor,
            work=work,
            overhead_minor=own.house_minor,
            total_minor=total,
            to_bars_minor=to_bars + extra,
            to_offcuts_minor=to_offcuts,
            written_off_minor=wasted_off,
            good_bars=bars.good,
            reworked_bars=bars.reworked,
            rejected_bars=bars.rejected,
            wasted_bars=bars.wasted,
            per_bar_minor=each_bar(to_bars + extra - wasted_off, bars.good + bars.reworked),
            unknown=tuple(unknown),
            carriage=tuple(
                (self.lots[lot].code, self.carriage[lot].by)
                for lot in dict.fromkeys(lot for lot, _ in self.taken[batch.id])
                if lot in self.carriage
            ),
            taken_minor=sum(one.taken_minor - one.returned_minor for one in sold.sums),
            by_outlet=tuple(
                TakenAt(self._name(one), one.bars, one.taken_minor, one.returned_minor, one.tax_minor, one.fees_minor)
                for one in sold.sums
            ),
            sold_bars=sold.bars,
            unpriced_bars=sold.unpriced,
            gain_per_bar_minor=sold.gain_minor,
        )

    def _bars(self, batch: BatchRow, *costs: int) -> tuple[Bars, int, int]:
        """What became of its bars; what those thrown away and rejected bear; what those sold cost."""
        if not batch.soap or batch.yield_lot_id is None:
            return Bars(0, 0, 0, 0), 0, 0
        lot, moves = self.cost_lots[batch.yield_lot_id], self.facts.moves[batch.yield_lot_id]
        nothing = bears_nothing(lot, moves, load_the_good=self.facts.load_the_good)
        shares: list[Shares] = [spread(one, moves, unloaded=nothing) for one in costs]
        off, sold = (
            sum(one.by_movement.get(move.id, 0) for one in shares for move in moves if move.way in ways)
            for ways in (("wasted",), ("sold", "dispatched", "returned"))
        )
        return bars_of(lot, moves), off + (sum(one.left for one in shares) if lot.rejected else 0), sold

    def _brought(self, batch: BatchRow, sold_cost: int, *, known: bool) -> "_Sold":
        lot = batch.yield_lot_id if batch.soap else None
        if lot is None:
            return _Sold((), 0, 0, None)
        sums, moves = by_outlet(self.brought[lot], self.charges, lot), self.facts.moves.get(lot, ())
        out = -sum(one.quantity for one in moves if one.way in ("sold", "dispatched"))
        back = sum(one.quantity for one in moves if one.way == "returned")
        left, unpriced = sum(one.left_minor for one in sums), self.unpriced.get(lot, 0)
        gain = gain_each(left, sold_cost, out - back) if known and not unpriced else None
        return _Sold(sums, out - back, unpriced, gain)

    def _name(self, one: OutletSum) -> str:
        place, customer = one.outlet
        if customer is not None:
            return self.customers.get(customer) or "a customer"
        return self.places[place] if place is not None else "someone not named"
