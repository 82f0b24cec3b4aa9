"""What lots are made of, down to the lots as received: each lot worked out once, however long the chain behind it."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from fractions import Fraction
from math import gcd, lcm
from typing import NamedTuple

from ledger.domain.recipe.recipe import AFTER_THE_COOK, Recipe
from ledger.errors import BadInput
from ledger.rows.batch import worked_by
from ledger.rows.lot import LotRow, lots_by_id
from ledger.rows.movement import TakenBehind, taken_behind
from ledger.rows.opened import Rows
from ledger.rows.recipe import versions_by_id

# A lot as received, whether it is a fat held back, and the name declared of a herb that was strained out of it.
Key = tuple[int, bool, str | None]
_DUST = 1e-18  # of a batch: what is less is not followed further back, since no tonne of it would come to a milligram
_FINE = 10**40  # parts, where dust is not followed


class Taken(NamedTuple):
    """So much of a lot, in mg, that a batch took; whether it was a fat held back."""

    lot: LotRow
    used_mg: int
    held_back: bool


class _Made(NamedTuple):
    """Whole parts of each base of a lot, out of so many."""

    parts: Mapping[Key, int]
    whole: int


class Compositions:
    """The compositions of one state of a ledger, remembered while one answer is worked out."""

    def __init__(self, rows: Rows, of: Collection[int] | None = None) -> None:
        """Reads by set: as many statements for a long chain as for a short one.

        `of` names the batches that alone will be asked about, for their masses: what stands behind them is read
        together, and followed back only until it is dust, however long the drums were topped up before.
        """
        self._rows, self._followed = rows, of is None
        self.lots: dict[int, LotRow] = {}  # every lot come across so far
        self._took: dict[int, tuple[Taken, ...]] = {}  # by batch
        self._worked: dict[int, tuple[str, int | None]] = {}  # process and recipe version, by batch
        self._recipes: dict[int, Recipe] = {}  # of infusions, by version
        self._made: dict[int, _Made] = {}  # by lot
        if of is not None:
            self._read_down_to_dust(of)

    def lot(self, lot_id: int) -> LotRow:
        """A lot, read where it was not come across yet."""
        if lot_id not in self.lots:
            self.lots |= lots_by_id(self._rows, [lot_id])
        return self.lots[lot_id]

    def taken_by(self, batch_id: int) -> tuple[Taken, ...]:
        """What a batch took, wrapping apart."""
        if self._followed:
            self._read([batch_id])
        return self._took[batch_id]

    def shares(self, lot: LotRow) -> dict[Key, Fraction]:
        """The shares of one lot, adding up to 1: itself if it was bought, else what its batch was made of.

        Of an infusion the botanicals do not count: the herb was strained out, and what was strained out is not
        an ingredient, but for what the maker says was carried over. Raises BadInput for one of botanicals alone.
        """
        made = self._work_out(lot)
        return {key: Fraction(part, made.whole) for key, part in made.parts.items()}

    def weights(self, lot: LotRow, out_of: int) -> dict[Key, int]:
        """The same shares in whole parts out of so many, each rounded, a half to the even one."""
        made = self._work_out(lot)
        found = {}
        for key, part in made.parts.items():
            weight, rest = divmod(part * out_of, made.whole)
            found[key] = weight + (2 * rest + weight % 2 > made.whole)
        return found

    def _work_out(self, lot: LotRow) -> _Made:
        """What stands behind a lot first, and the lot last."""
        self.lots[lot.id] = lot
        waiting, above = [lot], set[int]()
        while waiting:
            one = waiting[-1]
            if one.id in self._made:
                waiting.pop()
                continue
            behind = [taken.lot for taken in self._behind(one)]
            if one.id not in above:
                above.add(one.id)
                waiting += [part for part in behind if part.id not in self._made and part.id not in above]
                continue
            self._made[one.id] = self._mixed(one)
            waiting.pop()
        return self._made[lot.id]

    def _of(self, lot: LotRow) -> _Made:
        """No lot is made of itself; where a damaged ledger says so, it counts as received."""
        return self._made.get(lot.id) or _Made({(lot.id, False, None): 1}, 1)

    def _behind(self, lot: LotRow) -> tuple[Taken, ...]:
        if lot.batch_id is None or not (self._followed or lot.batch_id in self._took):
            return ()
        return self.taken_by(lot.batch_id)

    def _mixed(self, lot: LotRow) -> _Made:
        inputs = self._behind(lot)
        if lot.batch_id is None or lot.batch_id not in self._took:
            return _Made({(lot.id, False, None): 1}, 1)
        parts: dict[Key, int] = {}
        process, version = self._worked[lot.batch_id]
        carried, of = 0, 1_000_000
        if process == "infusion":
            herbs = [one for one in inputs if one.lot.kind == "botanical"]
            inputs = tuple(one for one in inputs if one.lot.kind != "botanical")
            if not inputs:
                raise BadInput(f"Lot {lot.code} was made of botanicals alone; what it declares cannot be told.")
            recipe = self._recipes.get(version) if version is not None else None
            if recipe and recipe.herb and herbs:
                carried = recipe.herb.carried_ppm
                parts[herbs[0].lot.id, False, recipe.herb.inci] = 0
        common = lcm(*(self._of(one.lot).whole for one in inputs))
        used = sum(one.used_mg for one in inputs) * common
        for key in parts:
            parts[key] = carried * used
        for one in inputs:
            made = self._of(one.lot)
            for (base, held, herb), part in made.parts.items():
                key = (base, one.held_back or held, herb)
                more = one.used_mg * part * (common // made.whole) * (of - carried)
                parts[key] = parts.get(key, 0) + more
        whole = used * of
        if not self._followed and whole > _FINE:
            return _Made({key: part * _FINE // whole for key, part in parts.items()}, _FINE)
        least = gcd(whole, *parts.values())
        return _Made({key: part // least for key, part in parts.items()}, whole // least)

    def _read(self, batches: Iterable[int]) -> None:
        """Read what batches took, and what all the batches behind took."""
        if asked := set(batches) - self._took.keys():
            found = taken_behind(self._rows, asked)
            behind = {row.behind for rows in found.values() for row in rows if row.behind is not None}
            self._keep(found, (asked | behind) - self._took.keys())

    def _read_down_to_dust(self, batches: Collection[int]) -> None:
        """Likewise, a batch only while what was taken of it comes to more than dust of all these together."""
        found = taken_behind(self._rows, batches)
        level, reached, depth = dict.fromkeys(batches, 1.0), set[int](), 0
        while level and depth <= len(reached):  # what would go deeper is made of itself, in a damaged ledger
            reached |= level.keys()
            behind: dict[int, float] = defaultdict(float)
            for batch, share in level.items():
                whole = sum(row.used for row in found[batch])
                for row in found[batch]:
                    if row.behind is not None:
                        behind[row.behind] += share * row.used / whole
            level, depth = {batch: share for batch, share in behind.items() if share > _DUST}, depth + 1
        self._keep(found, reached)

    def _keep(self, found: Mapping[int, Sequence[TakenBehind]], batches: Collection[int]) -> None:
        """What of it these batches took, how they worked and by which recipe they steeped herbs."""
        taken = [row for batch in batches for row in found.get(batch, ())]
        if more := {row.lot_id for row in taken} - self.lots.keys():
            self.lots |= lots_by_id(self._rows, more)
        self._took |= dict.fromkeys(batches, ())
        for row in taken:
            held = row.role == "fat" and row.stage == AFTER_THE_COOK
            self._took[row.batch_id] += (Taken(self.lots[row.lot_id], row.used, held),)
        worked = worked_by(self._rows, batches)
        self._worked |= worked
        steeped = {version for process, version in worked.values() if process == "infusion" and version is not None}
        if more := steeped - self._recipes.keys():
            self._recipes |= versions_by_id(self._rows, more)
