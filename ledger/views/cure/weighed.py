"""What the weighings of a batch say before any forecast: what was weighed, the dry bar, and how earlier batches did."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from math import floor
from typing import NamedTuple

from ledger.domain.cure.weighings import Lost, Weighing, last_week, lost_since, same_bars, too_coarse
from ledger.domain.recipe.recipe import WEEKLY_LOSS_PPM, Recipe
from ledger.rows.batch import BatchRow, cut_before
from ledger.rows.opened import Rows
from ledger.rows.reading import ReadingRow, current_readings, readings_of
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.units.dates import show_date
from ledger.units.measures import scale_unit
from ledger.units.quantity import WHOLE_PPM, show_mass, show_share
from ledger.units.wording import count
from ledger.units.words import Units
from ledger.views.cure.drying import Drying

EARLIER = 3  # batches of the recipe that are laid beside this one
_NEAR_DAYS = 3  # by which the age of two weighings may differ


class Earlier(NamedTuple):
    """What an earlier batch of the recipe had lost by the same age, in ppm of its first weighing."""

    batch_code: str
    lost_ppm: int


@dataclass(frozen=True)
class Weighed:
    """What is known without any law of drying."""

    on: date | None  # of the last weighing
    lightest_mg: int | None  # of the bars weighed then; their average where they were only weighed together
    together: int | None  # how many those were
    dry_mg: int | None  # that bar with all its water gone, or an average one; None where the cut was not weighed
    of_the_lightest: bool  # whether it is of that bar, so that no bar weighed is lighter
    weekly_limit_ppm: int
    weigh_together: int | None  # bars to weigh at once, where the scale sees too little of what was weighed
    age_days: int | None  # since the cut
    first_age_days: int | None  # at the first weighing
    lost_ppm: int | None  # since the first weighing
    earlier: tuple[Earlier, ...]
    step_mg: int
    last: Lost | None = field(metadata={"inner": True})

    @property
    def losing(self) -> bool:
        """Whether the last week took more than the recipe lets steady bars lose."""
        return self.last is not None and self.last.over(self.weekly_limit_ppm)


def weighings(rows: Rows, batch: BatchRow, *, on: date | None = None) -> tuple[Weighing, ...]:
    """The weighings of marked bars, and of bars together, up to a day (all); of two on one day the later counts."""
    return weighings_among(current_readings(rows, batch.id), on=on)


def weighings_among(readings: Iterable[ReadingRow], *, on: date | None = None) -> tuple[Weighing, ...]:
    """Likewise, of the readings that count."""
    found: dict[tuple[date, str], Weighing] = {}
    for one in readings:
        if one.what != "bar weight" or one.value is None or (on is not None and one.on > on):
            continue
        if one.bars:
            mark = f"{one.bars} together"
            found[one.on, mark] = Weighing(one.on, mark, round(Fraction(one.value, one.bars)), one.bars)
        elif one.mark:
            found[one.on, one.mark] = Weighing(one.on, one.mark, one.value)
    return tuple(sorted(found.values(), key=lambda one: (one.on, one.mark)))


def still_losing(rows: Rows, batch: BatchRow, *, on: date) -> str | None:
    """That the bars of a batch lost more than its recipe allows when they were weighed last up to a day, in words."""
    recipe = recipe_of(rows, batch)
    limit = recipe.weekly_loss_ppm if recipe else WEEKLY_LOSS_PPM
    return losing_words(weighings(rows, batch, on=on), limit)


def losing_words(known: Sequence[Weighing], limit_ppm: int) -> str | None:
    """Likewise by the weighings that are known."""
    lost = last_week(same_bars(known))
    if lost is None or not lost.over(limit_ppm):
        return None
    weekly = show_share(round(lost.weekly * WHOLE_PPM), 2)
    return f"weighed on {show_date(lost.on)} it was losing {weekly} a week, over the {show_share(limit_ppm, 2)} allowed"


def weighed(rows: Rows, batch: BatchRow, known: tuple[Weighing, ...], recipe: Recipe, drying: Drying) -> Weighed:
    """What the weighings that are known, up to some day, say of a batch that was cut."""
    series, step = same_bars(known), settings(rows).scale_step_mg
    assert batch.yielded_on is not None
    last_on = known[-1].on if known else None
    last = [one for one in known if one.on == last_on]
    light = min([one for one in last if one.bars == 1] or last, key=lambda one: one.mass_mg, default=None)
    dry, whose = _dry(batch, known, light, drying)
    at = series[-1].on if series else None
    lost = lost_since(series, series[0].on, at) if at else None
    age = (at - batch.yielded_on).days if at else None
    return Weighed(
        on=last_on,
        lightest_mg=light.mass_mg if light else None,
        together=light.bars if light and light.bars > 1 else None,
        dry_mg=dry,
        of_the_lightest=whose,
        weekly_limit_ppm=recipe.weekly_loss_ppm,
        weigh_together=too_coarse(series, step_mg=step, weekly_ppm=recipe.weekly_loss_ppm) if series else None,
        age_days=age,
        first_age_days=(series[0].on - batch.yielded_on).days if series else None,
        lost_ppm=round(lost * WHOLE_PPM) if lost is not None else None,
        earlier=_earlier(rows, batch, (series[0].on - batch.yielded_on).days, age) if age else (),
        step_mg=step,
        last=last_week(series),
    )


def _dry(
    batch: BatchRow, known: tuple[Weighing, ...], light: Weighing | None, drying: Drying
) -> tuple[int | None, bool]:
    """The lightest bar with all its water gone, from its own first weighing: at least, where that came after the cut.

    An average bar where none was weighed by itself; one that was weighed lighter than that can be leaves it unknown.
    """
    kept = drying.dry_of_the_cut(batch)
    if kept is None:
        return None, False
    if light is None:
        mean = drying.cut_bar(batch)
        return (None if mean is None else floor(mean * kept)), False
    first = next(one.mass_mg for one in known if one.mark == light.mark)
    dry = floor(Fraction(first) * kept)
    return (dry if dry <= light.mass_mg else None), light.bars == 1


def _earlier(rows: Rows, batch: BatchRow, first: int, age: int) -> tuple[Earlier, ...]:
    """What the last batches of the recipe, first weighed as soon after the cut, had lost at about this age."""
    before = cut_before(rows, batch)
    readings, found = readings_of(rows, [one.id for one in before]), []
    for one in before:
        series = same_bars(weighings_among(readings[one.id]))
        if not series or one.yielded_on is None or abs((series[0].on - one.yielded_on).days - first) > _NEAR_DAYS:
            continue
        cut = one.yielded_on
        near = min({each.on for each in series}, key=lambda on: abs((on - cut).days - age))
        lost = lost_since(series, series[0].on, near)
        if lost is not None and near > series[0].on and abs((near - cut).days - age) <= _NEAR_DAYS:
            found.append(Earlier(one.code, round(lost * WHOLE_PPM)))
    return tuple(found[:EARLIER])


def weighed_words(seen: Weighed, units: Units) -> tuple[str, ...]:
    """What was weighed, the weight with all water gone, and how earlier batches did, a sentence or two for each."""
    return tuple(one for one in (_last(seen, units), _dry_words(seen, units), _earlier_words(seen)) if one)


def _last(seen: Weighed, units: Units) -> str:
    limit = f"your limit is {show_share(seen.weekly_limit_ppm)} a week"
    if seen.on is None or seen.lightest_mg is None:
        return f"No marked bar was weighed; {limit}."
    weight = show_mass(seen.lightest_mg, units)
    what = f"{seen.together} together, {weight} each" if seen.together else f"the lightest {weight}"
    said = f"Weighed on {show_date(seen.on)}: {what}."
    if seen.last is None:
        said += f" What a week takes is known from a second weighing on; {limit}."
    else:
        days, share = (seen.last.on - seen.last.since).days, show_share(round(seen.last.share * WHOLE_PPM))
        weekly = f", {show_share(round(seen.last.weekly * WHOLE_PPM))} a week" if days != 7 else ""
        said += f" The last {days} days took {share}{weekly}; {limit}."
    if seen.weigh_together:
        said += (
            f" A scale that shows steps of {show_mass(seen.step_mg, units)} cannot see "
            f"{show_share(seen.weekly_limit_ppm)} a week of that; weigh {seen.weigh_together} bars together."
        )
    return said


def _dry_words(seen: Weighed, units: Units) -> str:
    if seen.dry_mg is None:
        return (
            "What a bar weighs with all its water gone is not known here: the cut was not weighed, or the bars weigh "
            "less than what went in lets expect."
        )
    whole = seen.dry_mg // 1000 * 1000 if scale_unit(units) == "g" else seen.dry_mg
    if seen.of_the_lightest:
        dry = f"With all its water gone it weighs {show_mass(whole, units)} at the least"
        return f"{dry}: print that, and drying never makes it short."
    return f"With all its water gone an average bar weighs {show_mass(whole, units)}."


def _earlier_words(seen: Weighed) -> str:
    if seen.age_days is None or seen.lost_ppm is None or seen.age_days == seen.first_age_days:
        return ""
    first = f"Between {seen.first_age_days} and " if seen.first_age_days else ""
    own = f"{first}{count(seen.age_days, 'day')} after the cut {'it has' if seen.earlier else 'this batch has'} lost"
    if not seen.earlier:
        return f"{own} {show_share(seen.lost_ppm)}; no earlier batch of the recipe was weighed at that age."
    theirs = ", ".join(f"{show_share(one.lost_ppm)} ({one.batch_code})" for one in seen.earlier)
    last = "last batch" if len(seen.earlier) == 1 else f"last {len(seen.earlier)} batches"
    return f"{own} {show_share(seen.lost_ppm)} of its first weight; your {last} of the recipe had lost {theirs}."
