"""What lots are made of, down to the lots as received: each lot worked out once, however long the chain behind it."""

import json
import sqlite3
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from ledger.domain.recipe import IN_THE_FATS
from ledger.errors import BadInput
from ledger.views.kept_recipe import kept_version
from ledger.views.lots import LotRow, lots_by_id

# A lot as received, whether it is a fat held back, and the name declared of a herb that was strained out of it.
Key = tuple[int, bool, str | None]


@dataclass(frozen=True)
class Taken:
    """So much of a lot, in mg, that a batch took; whether it was a fat held back."""

    lot: LotRow
    used_mg: int
    held_back: bool


@dataclass(frozen=True)
class _Made:
    """Whole parts of each base of a lot, out of so many."""

    parts: Mapping[Key, int]
    whole: int


class Compositions:
    """The compositions of one state of a ledger, remembered while one answer is worked out."""

    def __init__(self, rows: sqlite3.Connection) -> None:
        """Reads by set: as many statements for a chain as it is long, whatever else the ledger holds."""
        self._rows = rows
        self._took: dict[int, tuple[Taken, ...]] = {}  # by batch
        self._made: dict[int, _Made] = {}  # by lot

    def taken_by(self, batch_id: int) -> tuple[Taken, ...]:
        """What a batch took, wrapping apart."""
        self._read([batch_id])
        return self._took[batch_id]

    def shares(self, lot: LotRow) -> dict[Key, Fraction]:
        """The shares of one lot, adding up to 1: itself if it was bought, else what its batch was made of.

        Of an infusion the botanicals do not count: the herb was strained out, and what was strained out is not
        an ingredient, but for what the maker says was carried over. Raises BadInput for one of botanicals alone.
        """
        self._work_out(lot)
        made = self._made[lot.id]
        return {key: Fraction(part, made.whole) for key, part in made.parts.items()}

    def _work_out(self, lot: LotRow) -> None:
        """What stands behind a lot first, and the lot last."""
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

    def _of(self, lot: LotRow) -> _Made:
        """No lot is made of itself; where a damaged ledger says so, it counts as received."""
        return self._made.get(lot.id) or _Made({(lot.id, False, None): 1}, 1)

    def _behind(self, lot: LotRow) -> tuple[Taken, ...]:
        return () if lot.batch_id is None else self.taken_by(lot.batch_id)

    def _mixed(self, lot: LotRow) -> _Made:
        inputs = self._behind(lot)
        if lot.batch_id is None:
            return _Made({(lot.id, False, None): 1}, 1)
        parts: dict[Key, int] = {}
        batch = self._rows.execute(
            "SELECT process, recipe_version_id FROM batch WHERE id = ?", (lot.batch_id,)
        ).fetchone()
        carried, of = 0, 1_000_000
        if batch["process"] == "infusion":
            herbs = [one for one in inputs if one.lot.kind == "botanical"]
            inputs = tuple(one for one in inputs if one.lot.kind != "botanical")
            if not inputs:
                raise BadInput(f"Lot {lot.code} was made of botanicals alone; what it declares cannot be told.")
            recipe = kept_version(self._rows, batch["recipe_version_id"])
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
        least = gcd(used * of, *parts.values())
        return _Made({key: part // least for key, part in parts.items()}, used * of // least)

    def _read(self, batches: Iterable[int]) -> None:
        """Read what batches took, and what the batches behind took, level by level."""
        level = [one for one in batches if one not in self._took]
        while level:
            self._took |= dict.fromkeys(level, ())
            found = self._rows.execute(
                """
                SELECT v.batch_id, v.lot_id, -sum(v.quantity) AS used, p.role, p.stage
                FROM json_each(:batches) w CROSS JOIN movement v ON v.batch_id = w.value AND v.kind = 'consumed'
                LEFT JOIN plan_line p ON p.id = v.plan_line_id
                GROUP BY v.batch_id, v.lot_id, p.role, p.stage HAVING used > 0 ORDER BY v.batch_id, min(v.id)
                """,
                {"batches": json.dumps(level)},
            ).fetchall()
            lots = lots_by_id(self._rows, {row["lot_id"] for row in found})
            for row in found:
                lot = lots[row["lot_id"]]
                if lot.kind != "packaging":
                    held = row["role"] == "fat" and row["stage"] != IN_THE_FATS
                    self._took[row["batch_id"]] += (Taken(lot, row["used"], held),)
            behind = dict.fromkeys(lot.batch_id for lot in lots.values() if lot.batch_id is not None)
            level = [one for one in behind if one not in self._took]
