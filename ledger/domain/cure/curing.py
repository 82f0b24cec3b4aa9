"""When bars are ready, counted from the cut."""

from datetime import date, timedelta
from typing import NamedTuple


class Cure(NamedTuple):
    """The days that matter to one batch on its rack."""

    ready_on: date
    usable_from: date | None
    days_left: int  # below zero: ready for so many days


def cure(*, cut_on: date, days: int, usable_from_days: int | None, today: date) -> Cure:
    """The cure-ready date from the recipe's own days; no standard gives them (common practice)."""
    ready = cut_on + timedelta(days=days)
    usable = None if usable_from_days is None else cut_on + timedelta(days=usable_from_days)
    return Cure(ready, usable, (ready - today).days)
