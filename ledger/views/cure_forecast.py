"""The weighings of the marked bars of a batch, and what they, or else its composition, forecast."""

import sqlite3
from collections import defaultdict
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from ledger.domain.dates import add_months, show_date
from ledger.domain.drying_curve import Curve, fit, from_composition
from ledger.domain.quantity import show_mass, show_share
from ledger.domain.saponification import WHOLE_PPM
from ledger.views.batch import BatchRow, recipe_of
from ledger.views.bench import current_readings
from ledger.views.drying import left_of_the_cut
from ledger.views.lots import lot_by_id
from ledger.views.reading import day

BY_WEIGHINGS, BY_COMPOSITION = "weighings", "composition"
FEWEST_DAYS = 4  # of weighings, the first among them, before a curve is fitted


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
    why: str | None  # why the weighings do not say, where the composition has to
    start: date
    first_mg: int | None  # what a bar weighed at first, on average
    curve: Curve
    weekly_limit_ppm: int
    steady_on: date
    steady_give_days: int  # to either side, as sure as `surely` says
    end_on: date  # of the stock life

    @property
    def surely(self) -> str:
        """How sure the range is."""
        return "about 95 %" if self.basis == BY_WEIGHINGS else "a rough range: common practice, no source"

    def weight_on(self, on: date) -> tuple[int, int] | None:
        """The weight of a bar on a day and how far it may lie to either side, in mg; None where none was weighed."""
        if self.first_mg is None:
            return None
        days = max((on - self.start).days, 0)
        return round(self.first_mg * self.curve.left(days)), round(self.first_mg * self.curve.half_width(days))


def weighings(rows: sqlite3.Connection, batch: BatchRow, *, on: date | None = None) -> tuple[Weighing, ...]:
    """The weighings of marked bars up to a day (all), in the order of days; of two on one day the later counts."""
    found: dict[tuple[str, str], Weighing] = {}
    for row in current_readings(rows, batch.id):
        if row["what"] == "bar weight" and row["mark"] and (on is None or day(row["on"]) <= on):
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
    why = None
    first = _mean([one.mass_mg for one in known if one.on == start]) if known else None
    if curve is None:
        few = len({one.on for one in known}) < FEWEST_DAYS
        why = "not weighed on four days yet" if few else "its weighings show no drying that a curve fits"
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
        why=why,
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
    recipe = recipe_of(rows, batch)
    if recipe is None or batch.cure_days is None:
        return None
    driest = left_of_the_cut(rows, batch, recipe.driest_water_ppm)
    cured = left_of_the_cut(rows, batch, recipe.water_left_ppm)
    if driest is None or cured is None:
        return None
    return from_composition(float(1 - driest), float(1 - cured), batch.cure_days)


def forecast_words(view: Forecast, units: str, *, today: date | None = None) -> str:
    """The forecast in sentences: since when the bars are steady, what one weighs, and how sure that is."""
    ground = "By its weighings" if view.basis == BY_WEIGHINGS else f"From its composition ({view.why})"
    give = f"{view.steady_give_days} day{'s' * (view.steady_give_days != 1)}"
    said = (
        f"{ground} it loses less than {show_share(view.weekly_limit_ppm)} a week from about "
        f"{show_date(view.steady_on)} (give or take {give}, {view.surely})."
    )
    days = [(f"on {show_date(today)}", today)] if today else []
    days += [("then", view.steady_on)] if today is None or view.steady_on > today else []
    days += [("at the end of its stock life", view.end_on)]
    weights = [(name, found) for name, on in days if (found := view.weight_on(on))]
    if weights:
        shown = (f"{name} {show_mass(one, units)} ± {show_mass(give, units)}" for name, (one, give) in weights)
        said += f" A bar weighs {', '.join(shown)}."
    return said
