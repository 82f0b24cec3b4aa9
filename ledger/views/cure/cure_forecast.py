"""The weighings of the marked bars of a batch, and what they, or else its composition, forecast."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date, timedelta
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from ledger.domain.cure.drying_curve import Curve, fit, from_composition
from ledger.domain.recipe.recipe import Recipe
from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.reading import ReadingRow, current_readings
from ledger.units.dates import add_months, show_date
from ledger.units.quantity import WHOLE_PPM, show_mass, show_share
from ledger.units.words import Units
from ledger.views.cure.drying import Drying

BY_WEIGHINGS, BY_COMPOSITION = "weighings", "composition"
IF_THE_ROOM, ROUGHLY = "if the room stays as it is", "a rough range: common practice, no source"
FEWEST_DAYS = 4  # of weighings, the first among them, before a curve is fitted


class Weighing(NamedTuple):
    """One marked bar on one day, in mg."""

    on: date
    mark: str
    mass_mg: int


@dataclass(frozen=True)
class Forecast:
    """How the bars dry, in ranges of which no share is claimed, and when their stock life ends."""

    basis: str  # "weighings" or "composition"
    why: str | None  # why the weighings do not say, where the composition has to
    weighings: int  # that it rests on, and on how many days
    weighing_days: int
    holds: str  # on what the range stands
    start: date
    first_mg: int | None  # what a bar weighed at first, on average
    dry_mg: int | None  # a bar with all its water gone, where that is known
    weekly_limit_ppm: int
    steady_from: date  # steady at the earliest
    steady_to: date  # and at the latest
    end_on: date  # of the stock life
    curve: Curve = field(metadata={"inner": True})

    @property
    def steady_on(self) -> date:
        """The day between the earliest and the latest at which the curve itself is steady."""
        days, _ = self.curve.steady_after(self.weekly_limit_ppm / WHOLE_PPM)
        return self.start + timedelta(days=ceil(days))

    def weight_on(self, on: date) -> tuple[int, int] | None:
        """The least and the most that a bar may weigh on a day, in mg; None where none was weighed."""
        return self.weight_after(max((on - self.start).days, 0))

    def weight_after(self, days: float) -> tuple[int, int] | None:
        """Likewise so many days after the start. A bar does not lose more than its water."""
        if self.first_mg is None:
            return None
        middle, give = self.curve.left(days), self.curve.half_width(days)
        low, high = floor(self.first_mg * (middle - give)), ceil(self.first_mg * (middle + give))
        return min(max(low, self.dry_mg or 0), high), high


def weighings(rows: Rows, batch: BatchRow, *, on: date | None = None) -> tuple[Weighing, ...]:
    """The weighings of marked bars up to a day (all), in the order of days; of two on one day the later counts."""
    return weighings_among(current_readings(rows, batch.id), on=on)


def weighings_among(readings: Iterable[ReadingRow], *, on: date | None = None) -> tuple[Weighing, ...]:
    """Likewise, of the readings that count."""
    found: dict[tuple[date, str], Weighing] = {}
    for one in readings:
        if one.what == "bar weight" and one.mark and one.value is not None and (on is None or one.on <= on):
            found[one.on, one.mark] = Weighing(one.on, one.mark, one.value)
    return tuple(sorted(found.values(), key=lambda one: (one.on, one.mark)))


def forecast(rows: Rows, batch: BatchRow, known: tuple[Weighing, ...], drying: Drying | None = None) -> Forecast | None:
    """By the weighings once they are on four days at least; else by the composition; None before the cut.

    An answer about several batches hands what it read of their drying.

    The weighings of a bar count from its own first; bars marked later than the first day are left out of the fit.
    """
    if batch.recipe_version_id is None or batch.yielded_on is None or batch.ready_on is None:
        return None
    drying = drying or Drying(rows, [batch])
    recipe = drying.recipe(batch)
    assert recipe is not None
    end = add_months(batch.on, recipe.best_before_months)
    curve, start, basis = _by_weighings(known), known[0].on if known else batch.yielded_on, BY_WEIGHINGS
    why = None
    first = _mean([one.mass_mg for one in known if one.on == start]) if known else None
    if curve is None:
        few = len({one.on for one in known}) < FEWEST_DAYS
        why = "not weighed on four days yet" if few else "its weighings show no drying that a curve fits"
        curve, start, basis = _by_composition(batch, recipe, drying), batch.yielded_on, BY_COMPOSITION
        mass = drying.mass_of_the_bars(batch)
        if mass is not None and batch.made:
            first = round(Fraction(mass, batch.made))
        elif known and known[0].on > start:
            first = None
    if curve is None:
        return None
    days, give = curve.steady_after(recipe.weekly_loss_ppm / WHOLE_PPM)
    dry = drying.dry_bar(batch)
    first_marks = {one.mark for one in known if one.on == known[0].on}
    used = [one for one in known if one.mark in first_marks]
    return Forecast(
        basis=basis,
        why=why,
        weighings=len(used),
        weighing_days=len({one.on for one in used}),
        holds=IF_THE_ROOM if basis == BY_WEIGHINGS else ROUGHLY,
        start=start,
        first_mg=first,
        dry_mg=floor(dry) if dry is not None else None,
        weekly_limit_ppm=recipe.weekly_loss_ppm,
        steady_from=start + timedelta(days=max(floor(days - give), 0)),
        steady_to=start + timedelta(days=min(ceil(days + give), (date.max - start).days)),
        end_on=end,
        curve=curve,
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


def _by_composition(batch: BatchRow, recipe: Recipe, drying: Drying) -> Curve | None:
    driest = drying.left_of_the_cut(batch, recipe.driest_water_ppm)
    cured = drying.left_of_the_cut(batch, recipe.water_left_ppm)
    if driest is None or cured is None or batch.cure_days is None:
        return None
    return from_composition(float(1 - driest), float(1 - cured), batch.cure_days)


def forecast_words(view: Forecast, units: Units, *, today: date | None = None) -> str:
    """The forecast in sentences: between which days the bars are steady, what one weighs, and on what that stands."""
    ground = f"By {based_on(view)}" if view.basis == BY_WEIGHINGS else f"From its composition ({view.why})"
    first, last = show_date(view.steady_from), show_date(view.steady_to)
    when = f"from about {first}" if first == last else f"from a day between {first} and {last}"
    said = f"{ground} it loses less than {show_share(view.weekly_limit_ppm)} a week {when} ({view.holds})."
    days = [(f"on {show_date(today)}", today)] if today else []
    days += [("then", view.steady_on)] if today is None or view.steady_on > today else []
    days += [("at the end of its stock life", view.end_on)]
    weights = [(name, found) for name, on in days if (found := view.weight_on(on))]
    if weights:
        shown = (f"{name} {show_mass(low, units)} to {show_mass(high, units)}" for name, (low, high) in weights)
        said += f" A bar weighs {', '.join(shown)}."
    return said


def based_on(view: Forecast) -> str:
    """How many weighings it rests on."""
    return f"{view.weighings} weighings on {view.weighing_days} days"
