"""What the bars of a batch weighed last, and what is left of that weight at the end of the stock life."""

import sqlite3
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from ledger.domain.recipe import DRIEST_WATER_PPM
from ledger.domain.saponification import WHOLE_PPM
from ledger.views.batch import BatchRow, recipe_of
from ledger.views.drying import left_of_the_cut
from ledger.views.lots import lot_by_id
from ledger.views.reading import day


@dataclass(frozen=True)
class Weighings:
    """The bars weighed on one day, in mg; and the share of that weight left when they are driest, with its ground."""

    on: date
    weights_mg: tuple[int, ...]
    left_ppm: int
    ground: str


def last_weighings(rows: sqlite3.Connection, batch: BatchRow) -> Weighings | None:
    """The readings 'bar weight' of the latest day that has some; None before there is one."""
    found = rows.execute(
        'SELECT "on", value FROM live_reading WHERE batch_id = ? AND what = \'bar weight\' AND "on" = '
        "(SELECT max(\"on\") FROM live_reading WHERE batch_id = ? AND what = 'bar weight') ORDER BY id",
        (batch.id, batch.id),
    ).fetchall()
    if not found:
        return None
    weights = tuple(row["value"] for row in found)
    left, ground = _left(rows, batch, Fraction(sum(weights), len(weights)))
    return Weighings(day(found[0]["on"]), weights, left, ground)


def _left(rows: sqlite3.Connection, batch: BatchRow, mean_mg: Fraction) -> tuple[int, str]:
    """The mean at its driest over the mean now: from what a bar weighed at the cut and what it is made of.

    Where the bars were not weighed at the cut, nothing more is taken to dry away.
    """
    recipe = recipe_of(rows, batch)
    kept = left_of_the_cut(rows, batch, recipe.driest_water_ppm if recipe else DRIEST_WATER_PPM)
    cut = lot_by_id(rows, batch.yield_lot_id).mass_mg if batch.yield_lot_id else None
    if not kept or not cut or not batch.made:
        return WHOLE_PPM, "not forecast: the bars were not weighed together at the cut"
    dry_bar = Fraction(cut, batch.made) * kept
    left = min(dry_bar / mean_mg, Fraction(1))
    return round(left * WHOLE_PPM), "forecast from what went in and what the bars weighed at the cut"
