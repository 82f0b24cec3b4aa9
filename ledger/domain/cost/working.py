"""What a batch costs beside what goes into it: the work, by its stages, and what each batch bears of the house."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Literal, NamedTuple

from ledger.domain.cost.costing import labour_cost
from ledger.units.words import CostRateKind, Process, WorkStage

# Which minutes count: those booked by stage, else those read at the bench, else the recipe's; the work of a portion is
# that of the whole; none were told.
WorkFrom = Literal["stages", "readings", "recipe", "whole", "none"]
# What is a batch of work at the bench; pouring together, dividing and booking back in bear nothing of the house.
AT_THE_BENCH: tuple[Process, ...] = ("cold", "hot", "infusion", "blend", "rebatch")


class Rate(NamedTuple):
    """What an hour, or a batch beside its materials, costs from a day on."""

    kind: CostRateKind
    on: date
    minor: int


class Minutes(NamedTuple):
    """What is known of the work on a batch, in minutes; None where nothing was told."""

    stages: Mapping[WorkStage, int]
    readings: int | None
    recipe: int | None
    portion: bool = False


class Worked(NamedTuple):
    """The minutes that count, and where they come from."""

    minutes: int
    source: WorkFrom
    stages: tuple[tuple[WorkStage, int], ...] = ()
    read_too: int = 0  # minutes read at the bench, which do not count beside those by stage
    recipe_too: int = 0  # the recipe's, which do not either


class OwnCost(NamedTuple):
    """What a batch costs itself; None where no rate is set."""

    work_minor: int | None
    house_minor: int | None

    @property
    def total_minor(self) -> int:
        """As far as it is known."""
        return (self.work_minor or 0) + (self.house_minor or 0)


def rate_on(rates: Iterable[Rate], kind: CostRateKind, day: date) -> int | None:
    """The rate that holds on a day: the latest that began by then, the last booked where two began on one day."""
    held: Rate | None = None
    for one in rates:
        if one.kind == kind and one.on <= day and (held is None or one.on >= held.on):
            held = one
    return held.minor if held else None


def worked(told: Minutes) -> Worked:
    """Which minutes count; those by stage and those read at the bench never both."""
    recipe = 0 if told.portion else told.recipe or 0
    if told.stages:
        return Worked(sum(told.stages.values()), "stages", tuple(told.stages.items()), told.readings or 0, recipe)
    if told.readings is not None:
        return Worked(told.readings, "readings")
    if told.portion:
        return Worked(0, "whole")
    return Worked(0, "none") if told.recipe is None else Worked(told.recipe, "recipe")


def own_cost(
    work: Worked, rates: Iterable[Rate], *, day: date, process: Process, begun: bool, hour_minor: int | None
) -> OwnCost:
    """What a batch costs itself by the rates of its day; `hour_minor` holds before the first rate for an hour."""
    known = tuple(rates)
    hour = rate_on(known, "hour", day)
    hour = hour_minor if hour is None else hour
    house = rate_on(known, "batch", day) if begun and process in AT_THE_BENCH else None
    return OwnCost(None if hour is None else labour_cost(work.minutes, hour), house)
