"""What the weighings of a batch forecast: between which weights and which days, or why nothing yet."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from math import ceil, floor
from typing import NamedTuple

from ledger.domain.cure.envelope import FEWEST_DAYS, FEWEST_WEIGHINGS, Envelope, envelope
from ledger.domain.cure.weighings import Weighing, points, same_bars
from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.units.dates import add_months, show_date
from ledger.units.quantity import WHOLE_PPM, show_mass, show_share
from ledger.units.words import Units
from ledger.views.cure.drying import Drying
from ledger.views.cure.weighed import Weighed, weighed, weighed_words

IF_THE_ROOM = "if the room stays as it is"
_TOO_WIDE = 0.03  # of the weight at the end of the stock life: wider says nothing that helps
_TENTH_MG = 100  # weights are told to a tenth of a gram, outwards


@dataclass(frozen=True)
class Forecast:
    """Between what the bars may weigh, by every law that their weighings allow; and when their stock life ends."""

    weighings: int  # that it rests on, and on how many days
    weighing_days: int
    holds: str  # on what it stands
    start: date
    first_mg: int  # what a bar weighed at first, on average
    weekly_limit_ppm: int
    steady_from: date  # steady at the earliest
    steady_to: date  # and at the latest
    end_on: date  # of the stock life
    least_at_the_end_mg: int
    most_at_the_end_mg: int
    too_early: bool  # to say what they weigh then: the range is too wide
    envelope: Envelope = field(metadata={"inner": True})

    def weight_on(self, on: date) -> tuple[int, int]:
        """The least and the most that a bar may weigh on a day, in mg."""
        low, high = self.envelope.between(max((on - self.start).days, 0))
        return floor(low / _TENTH_MG) * _TENTH_MG, ceil(high / _TENTH_MG) * _TENTH_MG

    @property
    def based_on(self) -> str:
        """How many weighings it rests on."""
        return f"{self.weighings} weighings on {self.weighing_days} days"


class Dried(NamedTuple):
    """All that is said of the drying of a batch: what was weighed first, then the forecast, or why there is none."""

    seen: Weighed
    forecast: Forecast | None
    why_none: str | None


def dried(rows: Rows, batch: BatchRow, known: tuple[Weighing, ...], *, ahead: bool = True) -> Dried | None:
    """How a batch dries by the weighings that are known up to some day; None before the cut.

    `ahead` left out, nothing is forecast, which is what takes its time.
    """
    if batch.recipe_version_id is None or batch.yielded_on is None or batch.ready_on is None:
        return None
    drying = Drying(rows, [batch])
    recipe = drying.recipe(batch)
    assert recipe is not None
    seen = weighed(rows, batch, known, recipe, drying)
    series = same_bars(known)
    days = sorted({one.on for one in series})
    if len(days) < FEWEST_WEIGHINGS or (days[-1] - days[0]).days < FEWEST_DAYS:
        return Dried(seen, None, f"Nothing is forecast before {FEWEST_WEIGHINGS} weighings over {FEWEST_DAYS} days.")
    found = points(series, step_mg=seen.step_mg)
    kept = drying.dry_of_the_cut(batch)
    curves = envelope(found, dry_mg=found[0].mg * float(kept or 0)) if ahead else None
    if curves is None:
        return Dried(seen, None, "Nothing is forecast: the bars weigh less than they can with all their water gone.")
    end = add_months(batch.on, recipe.best_before_months)
    earliest, latest = curves.steady(recipe.weekly_loss_ppm / WHOLE_PPM)
    low, high = curves.between(max((end - days[0]).days, 0))
    view = Forecast(
        weighings=len(series),
        weighing_days=len(days),
        holds=IF_THE_ROOM,
        start=days[0],
        first_mg=round(found[0].mg),
        weekly_limit_ppm=recipe.weekly_loss_ppm,
        steady_from=days[0] + timedelta(days=earliest),
        steady_to=days[0] + timedelta(days=latest),
        end_on=end,
        least_at_the_end_mg=floor(low),
        most_at_the_end_mg=ceil(high),
        too_early=high - low > _TOO_WIDE * high,
        envelope=curves,
    )
    return Dried(seen, view, None)


def dried_words(view: Dried, units: Units, *, today: date | None = None) -> tuple[str, ...]:
    """What was weighed, the dry bar and the earlier batches; then the forecast in sentences, or why there is none."""
    ahead = forecast_words(view.forecast, units, today=today) if view.forecast else view.why_none or ""
    return (*weighed_words(view.seen, units), ahead)


def forecast_words(view: Forecast, units: Units, *, today: date | None = None) -> str:
    """Between which days the bars are steady, between what one weighs, and on what that stands."""
    first, last = show_date(view.steady_from), show_date(view.steady_to)
    when = f"from about {first}" if first == last else f"from a day between {first} and {last}"
    said = f"By {view.based_on}, {view.holds}: it loses less than {show_share(view.weekly_limit_ppm)} a week {when}."
    if today is not None:
        said += f" On {show_date(today)} a bar weighs {_range(view, today, units)} on average."
    end = _range(view, view.end_on, units)
    if view.too_early:
        return f"{said} Too early to say what it weighs at the end of its stock life, {show_date(view.end_on)}: {end}."
    return f"{said} At the end of its stock life, {show_date(view.end_on)}, {end}."


def _range(view: Forecast, on: date, units: Units) -> str:
    low, high = (show_mass(one, units) for one in view.weight_on(on))
    return f"{low} to {high}"
