"""What a batch cost, from the lots that really went in."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from ledger.domain.cost.costing import Move, bars_and_offcuts, each_bar, labour_cost, lot_shares
from ledger.rows.batch import BatchRow, batches_by_id, find_batch
from ledger.rows.lot import LotRow, lots_by_id
from ledger.rows.movement import MovementRow, Taken, batches_behind, movements_of, offcuts_of, taken_into
from ledger.rows.opened import Rows
from ledger.rows.reading import minutes_worked
from ledger.rows.recipe import versions_by_id
from ledger.rows.sell.sale import taken_for
from ledger.rows.settings import settings
from ledger.units.words import Role, UsedAs


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
class BatchCost:
    """The cost of one batch; `unknown` names the lots whose cost is not known, which the total leaves out."""

    batch_code: str
    product: str
    currency: str
    lines: tuple[CostLine, ...]
    labour_minutes: int
    labour_minor: int | None  # None: no rate for an hour is set
    total_minor: int
    to_bars_minor: int  # the total less what the offcuts carry away by mass
    to_offcuts_minor: int
    good_bars: int  # neither thrown away nor reworked
    reworked_bars: int
    per_bar_minor: tuple[int, ...]  # one for each good bar and each reworked; they add up to what the bars cost
    taken_minor: int  # what was taken for them so far
    unknown: tuple[str, ...]


def batch_cost(rows: Rows, code: str) -> BatchCost:
    """The cost of a batch; raises like `find_batch`."""
    batch = find_batch(rows, code)
    return _Coster(rows, batch).batch(batch)


class _Coster:
    """Works costs out lot by lot, through infusions and combined drums at any depth, each once.

    Everything behind the batch is read at once: as many statements for a deep chain as for a plain soap.
    """

    def __init__(self, rows: Rows, batch: BatchRow) -> None:
        self.own = settings(rows)
        self.made = batches_by_id(rows, batches_behind(rows, batch.id))
        self.lines: dict[int, dict[tuple[int, Role | None], list[Taken]]] = defaultdict(lambda: defaultdict(list))
        for one in taken_into(rows, self.made):
            self.lines[one.batch_id][one.lot_id, one.role].append(one)
        bars = {one.yield_lot_id for one in self.made.values() if one.yield_lot_id is not None}
        self.lots = lots_by_id(rows, bars.union(lot for lines in self.lines.values() for lot, _ in lines))
        self.moves: dict[int, list[MovementRow]] = defaultdict(list)
        for move in movements_of(rows, self.lots):
            self.moves[move.lot_id].append(move)
        self.taken: Counter[int] = Counter()
        for gained in taken_for(rows, bars):
            self.taken[gained.lot_id] += gained.money_minor
        self.offcuts, self.minutes = offcuts_of(rows, self.made), minutes_worked(rows, self.made)
        versions = {one.recipe_version_id for one in self.made.values() if one.recipe_version_id is not None}
        self.recipes = versions_by_id(rows, versions)
        self._batches: dict[int, BatchCost] = {}
        self._shares: dict[int, dict[int, int] | None] = {}

    def batch(self, batch: BatchRow) -> BatchCost:
        """The cost of one batch, those behind it first, so that a long chain is no deep one."""
        waiting, above = [batch.id], set[int]()
        while waiting:
            one = waiting[-1]
            if one in self._batches or one in above:
                waiting.pop()
                if one not in self._batches:
                    self._batches[one] = self._work_out(self.made[one])
                continue
            above.add(one)
            waiting += [behind for behind in self._behind(one) if behind not in above]
        return self._batches[batch.id]

    def _behind(self, batch_id: int) -> list[int]:
        """The batches that gave what a batch took."""
        found = {self.lots[lot].batch_id for (lot, _), taken in self.lines[batch_id].items() if _used(taken) > 0}
        return sorted(one for one in found if one is not None)

    def _work_out(self, batch: BatchRow) -> BatchCost:
        lines = []
        unknown = []
        for (lot_id, role), taken in self.lines[batch.id].items():
            if _used(taken) <= 0:
                continue
            lot = self.lots[lot_id]
            share = self._lot_share(lot, taken)
            if share is None:
                unknown.append(lot.code)
            lines.append(CostLine(role or lot.kind, lot.material, lot.code, _used(taken), lot.counted, share))
        minutes = self._minutes(batch)
        rate = self.own.labour_minor_per_hour
        labour = None if rate is None else labour_cost(minutes, rate)
        total = sum(line.cost_minor or 0 for line in lines) + (labour or 0)
        wrapping = sum(line.cost_minor or 0 for line in lines if line.role == "packaging")
        to_bars, to_offcuts = self._split(batch, total, wrapping)
        bars = self.moves[batch.yield_lot_id] if batch.soap and batch.yield_lot_id is not None else []
        wasted, reworked = (-sum(one.quantity for one in bars if one.kind == kind) for kind in ("wasted", "consumed"))
        good = batch.made - wasted - reworked if batch.soap else 0
        return BatchCost(
            batch_code=batch.code,
            product=batch.product,
            currency=self.own.currency,
            lines=tuple(lines),
            labour_minutes=minutes,
            labour_minor=labour,
            total_minor=total,
            to_bars_minor=to_bars,
            to_offcuts_minor=to_offcuts,
            good_bars=good,
            reworked_bars=reworked,
            per_bar_minor=each_bar(to_bars, good + reworked),
            taken_minor=self.taken[batch.yield_lot_id or 0],
            unknown=tuple(unknown),
        )

    def _minutes(self, batch: BatchRow) -> int:
        if batch.id in self.minutes:
            return self.minutes[batch.id]
        if batch.part_of is not None or batch.recipe_version_id is None:  # the work of a portion is that of the whole
            return 0
        return self.recipes[batch.recipe_version_id].work_minutes or 0

    def _split(self, batch: BatchRow, total: int, wrapping: int) -> tuple[int, int]:
        """The total over bars and offcuts by mass, but for the wrapping; bars that were not weighed carry it all."""
        if not batch.soap or batch.yield_lot_id is None:
            return total, 0
        bars = self.lots[batch.yield_lot_id].mass_mg or 0
        return bars_and_offcuts(total, wrapping, bars_mg=bars, offcuts_mg=self.offcuts.get(batch.id, 0))

    def _lot_cost(self, lot: LotRow) -> int | None:
        if lot.batch_id is None:
            return lot.cost_minor
        batch = self.made[lot.batch_id]
        cost = self.batch(batch)
        if cost.unknown:
            return None
        return cost.to_bars_minor if lot.id == batch.yield_lot_id else cost.to_offcuts_minor

    def _lot_share(self, lot: LotRow, taken: Sequence[Taken]) -> int | None:
        """What a batch bears of a lot's cost, over all its movements in one role."""
        if lot.id not in self._shares:
            cost = self._lot_cost(lot)
            moves = [Move(one.id, one.quantity, one.kind) for one in self.moves[lot.id]]
            self._shares[lot.id] = None if cost is None else lot_shares(cost, moves)
        shares = self._shares[lot.id]
        return None if shares is None else sum(shares.get(one.id, 0) for one in taken)


def _used(taken: Sequence[Taken]) -> int:
    return sum(one.quantity for one in taken)
