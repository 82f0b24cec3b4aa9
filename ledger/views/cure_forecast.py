"""The weighings of the marked bars of a batch, and what they, or else its composition, forecast."""

import sqlite3
from collections import defaultdict
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from ledger.domain.dates import add_months
from ledger.domain.drying_curve import Curve, fit, from_composition
from ledger.domain.saponification import WHOLE_PPM
from ledger.views.batch import BatchRow, recipe_of
from ledger.views.bench import current_readings, mass_in
from ledger.views.drying import mass_dried_to
from ledger.views.lots import lot_by_id
from ledger.views.reading import day

BY_WEIGHINGS, BY_COMPOSITION = "weighings", "composition"


@dataclass(frozen=True)
class Weighing:
    """One marked bar on one day, in mg."""

    on: date
    mark: str
    mass_mg: int


@dataclass(frozen=True)
class Forecast:
    """How the bars dry: the curve, when they are steady, and when their stock life ends."""

    basis: str  # "weighings" or "composition"
    start: date
    first_mg: int | None  # what a bar weighed at first, on average
    curve: Curve
    weekly_limit_ppm: int
    steady_on: date
    steady_give_days: int  # to either side, about 95 %
    end_on: date  # of the stock life

    def weight_on(self, on: date) -> tuple[int, int] | None:
        """The weight of a bar on a day and how far it may lie to either side, in mg; None where none was weighed."""
        if self.first_mg is None:
            return None
        days = max((on - self.start).days, 0)
        return round(self.first_mg * self.curve.left(days)), round(self.first_mg * self.curve.half_width(days))


def weighings(rows: sqlite3.Connection, batch: BatchRow) -> tuple[Weighing, ...]:
    """Every weighing of a marked bar, in the order of days; of two on one day the later counts."""
    found: dict[tuple[str, str], Weighing] = {}
    for row in current_readings(rows, batch.id):
        if row["what"] == "bar weight" and row["mark"]:
            found[row["on"], row["mark"]] = Weighing(day(row["on"]), row["mark"], row["value"])
    return tuple(sorted(found.values(), key=lambda one: (one.on, one.mark)))


def forecast(rows: sqlite3.Connection, batch: BatchRow, known: tuple[Weighing, ...]) -> Forecast | None:
    """By the weighings once they are on four days at least; else by the composition; None before the cut.

    The weighings of a bar count from its own first; bars marked later than the first day are left out of the fit.
    """
    recipe = recipe_of(rows, batch)
    if recipe is None or batch.yielded_on is None or batch.yield_lot_id is None or batch.ready_on is None:
        return None
    end = add_months(batch.on, recipe.best_before_months)
    curve, start, basis = _by_weighings(known), known[0].on if known else batch.yielded_on, BY_WEIGHINGS
    first = _mean([one.mass_mg for one in known if one.on == start]) if known else None
    if curve is None:
        curve, start, basis = _by_composition(rows, batch), batch.yielded_on, BY_COMPOSITION
        mass = lot_by_id(rows, batch.yield_lot_id).mass_mg
        if mass is not None and batch.made:
            first = round(Fraction(mass, batch.made))
        elif known and known[0].on > start:
            first = None
    if curve is None:
        return None
    days, give = curve.steady_after(recipe.weekly_loss_ppm / WHOLE_PPM)
    return Forecast(
        basis=basis,
        start=start,
        first_mg=first,
        curve=curve,
        weekly_limit_ppm=recipe.weekly_loss_ppm,
        steady_on=start + timedelta(days=-int(-days // 1)),
        steady_give_days=-int(-give // 1),
        end_on=end,
    )


def _mean(masses: list[int]) -> int:
    return round(Fraction(sum(masses), len(masses)))


def _by_weighings(known: tuple[Weighing, ...]) -> Curve | None:
    if not known:
        return None
    bars: dict[str, list[Weighing]] = defaultdict(list)
    for one in known:
        bars[one.mark].append(one)
    points = [
        ((one.on - start).days, one.mass_mg / bar[0].mass_mg)
        for bar in bars.values()
        for one in bar[1:]
        if (start := bar[0].on) == known[0].on
    ]
    return fit(points)


def _by_composition(rows: sqlite3.Connection, batch: BatchRow) -> Curve | None:
    recipe, put_in = recipe_of(rows, batch), mass_in(rows, batch.id)
    if recipe is None or not put_in or batch.cure_days is None:
        return None
    driest = mass_dried_to(rows, batch, recipe.driest_water_ppm)
    cured = mass_dried_to(rows, batch, recipe.water_left_ppm)
    if driest is None or cured is None:
        return None
    return from_composition(1 - driest / put_in, 1 - cured / put_in, batch.cure_days)
