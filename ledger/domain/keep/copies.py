"""Which of the copies that were made day by day are kept."""

from collections.abc import Callable, Collection
from datetime import date

# So many days, weeks and months on which a copy was made; common practice, no source.
DAYS, WEEKS, MONTHS = 7, 5, 12

_PERIODS: tuple[tuple[int, Callable[[date], object]], ...] = (
    (DAYS, lambda day: day),
    (WEEKS, lambda day: day.isocalendar()[:2]),
    (MONTHS, lambda day: (day.year, day.month)),
)


def kept(copies: Collection[date]) -> frozenset[date]:
    """The latest copy of each of the last days, of the last weeks (Monday to Sunday) and of the last months.

    Only days, weeks and months that have a copy are counted, so that a pause takes nothing away; the newest is always
    among them.
    """
    found: set[date] = set()
    for number, period in _PERIODS:
        latest = {period(day): day for day in sorted(copies)}
        found.update(sorted(latest.values())[-number:])
    return frozenset(found)
