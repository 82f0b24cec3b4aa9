"""What a batch cost, from the lots that really went in."""

from dataclasses import dataclass

from ledger.domain.stock.costing import Move, bars_and_offcuts, each_bar, labour_cost, lot_shares
from ledger.rows.batch import BatchRow, batch_by_id, find_batch, recipe_of
from ledger.rows.lot import LotRow, lot_by_id
from ledger.rows.opened import Rows
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
    return _Coster(rows).batch(find_batch(rows, code))


class _Coster:
    """Works costs out lot by lot, through infusions and combined drums at any depth, each once."""

    def __init__(self, rows: Rows) -> None:
        self.rows = rows
        self.own = settings(rows)
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
                    self._batches[one] = self._work_out(batch_by_id(self.rows, one))
                continue
            above.add(one)
            waiting += [behind for behind in self._behind(one) if behind not in above]
        return self._batches[batch.id]

    def _behind(self, batch_id: int) -> list[int]:
        """The batches that gave what a batch took."""
        found = self.rows.execute(
            "SELECT DISTINCT l.batch_id FROM movement v JOIN lot l ON l.id = v.lot_id "
            "WHERE v.batch_id = ? AND v.kind = 'consumed' AND l.batch_id IS NOT NULL ORDER BY l.batch_id",
            (batch_id,),
        )
        return [row["batch_id"] for row in found]

    def _work_out(self, batch: BatchRow) -> BatchCost:
        lines = []
        unknown = []
        for row in self.rows.execute(
            "SELECT v.lot_id, -sum(v.quantity) AS used, p.role FROM movement v LEFT JOIN plan_line p "
            "ON p.id = v.plan_line_id WHERE v.batch_id = ? AND v.kind = 'consumed' "
            "GROUP BY v.lot_id, p.role HAVING used > 0 ORDER BY min(v.id)",
            (batch.id,),
        ).fetchall():
            lot = lot_by_id(self.rows, row["lot_id"])
            share = self._lot_share(lot, batch.id, row["role"])
            if share is None:
                unknown.append(lot.code)
            lines.append(CostLine(row["role"] or lot.kind, lot.material, lot.code, row["used"], lot.counted, share))
        minutes = self._minutes(batch)
        rate = self.own.labour_minor_per_hour
        labour = None if rate is None else labour_cost(minutes, rate)
        total = sum(line.cost_minor or 0 for line in lines) + (labour or 0)
        wrapping = sum(line.cost_minor or 0 for line in lines if line.role == "packaging")
        to_bars, to_offcuts = self._split(batch, total, wrapping)
        good, reworked = self._bars(batch)
        taken = self.rows.execute(
            "SELECT coalesce(sum(money_minor), 0) FROM movement WHERE lot_id = ?", (batch.yield_lot_id,)
        ).fetchone()[0]
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
            taken_minor=taken,
            unknown=tuple(unknown),
        )

    def _minutes(self, batch: BatchRow) -> int:
        logged = self.rows.execute(
            "SELECT sum(value) FROM live_reading r WHERE batch_id = ? AND what = 'labour' "
            "AND NOT EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id)",
            (batch.id,),
        ).fetchone()[0]
        if logged is not None:
            return int(logged)
        recipe = recipe_of(self.rows, batch) if batch.part_of is None else None  # its work is that of the whole
        return recipe.work_minutes or 0 if recipe else 0

    def _bars(self, batch: BatchRow) -> tuple[int, int]:
        """How many of its bars are good, and how many were reworked, which take their cost along."""
        if not batch.soap or batch.yield_lot_id is None:
            return 0, 0
        wasted, reworked = self.rows.execute(
            "SELECT coalesce(-sum(quantity) FILTER (WHERE kind = 'wasted'), 0), "
            "coalesce(-sum(quantity) FILTER (WHERE kind = 'consumed'), 0) FROM movement WHERE lot_id = ?",
            (batch.yield_lot_id,),
        ).fetchone()
        return batch.made - wasted - reworked, reworked

    def _split(self, batch: BatchRow, total: int, wrapping: int) -> tuple[int, int]:
        if not batch.soap or batch.yield_lot_id is None:
            return total, 0
        offcuts = self.rows.execute(
            "SELECT coalesce(sum(quantity), 0) FROM movement WHERE batch_id = ? AND kind = 'yielded' AND lot_id <> ?",
            (batch.id, batch.yield_lot_id),
        ).fetchone()[0]
        bars = lot_by_id(self.rows, batch.yield_lot_id).mass_mg or 0
        return bars_and_offcuts(total, wrapping, bars_mg=bars, offcuts_mg=offcuts)

    def _lot_cost(self, lot: LotRow) -> int | None:
        if lot.batch_id is None:
            return lot.cost_minor
        batch = batch_by_id(self.rows, lot.batch_id)
        cost = self.batch(batch)
        if cost.unknown:
            return None
        return cost.to_bars_minor if lot.id == batch.yield_lot_id else cost.to_offcuts_minor

    def _lot_share(self, lot: LotRow, batch_id: int, role: Role | None) -> int | None:
        """What a batch bears of a lot's cost, over all its movements in one role."""
        if lot.id not in self._shares:
            cost = self._lot_cost(lot)
            moves = self.rows.execute(
                "SELECT id, quantity, kind FROM live_movement WHERE lot_id = ? AND kind <> 'moved' ORDER BY id",
                (lot.id,),
            )
            self._shares[lot.id] = None if cost is None else lot_shares(cost, [Move(*row) for row in moves])
        shares = self._shares[lot.id]
        if shares is None:
            return None
        mine = self.rows.execute(
            "SELECT v.id FROM live_movement v LEFT JOIN plan_line p ON p.id = v.plan_line_id "
            "WHERE v.lot_id = ? AND v.batch_id = ? AND v.kind = 'consumed' AND p.role IS ?",
            (lot.id, batch_id, role),
        )
        return sum(shares.get(row["id"], 0) for row in mine)
