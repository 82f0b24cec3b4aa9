"""When entries were written, where the clock jumped: their numbers are the order, their times only a claim."""

from bisect import bisect_right
from collections.abc import Sequence


def written_by(times: Sequence[str], moment: str) -> int:
    """How many of the first entries were written before a moment, by what their clock said in the order of numbers.

    The longest series of entries whose times do not fall is believed. Any other, written while the clock was ahead or
    behind, counts as written with the believed one before it.
    """
    believed = _longest_rising(times)
    later = next((place for place in believed if times[place] >= moment), len(times))
    return later if believed and times[believed[0]] < moment else 0


def _longest_rising(times: Sequence[str]) -> list[int]:
    """The places of a longest series that does not fall; of two as long, the one that ends the earlier."""
    ends: list[str] = []  # the earliest end of a series of each length, and where it stands
    places: list[int] = []
    before: list[int] = []
    for place, time in enumerate(times):
        length = bisect_right(ends, time)
        ends[length : length + 1], places[length : length + 1] = [time], [place]
        before.append(places[length - 1] if length else -1)
    found, place = [], places[-1] if places else -1
    while place >= 0:
        found.append(place)
        place = before[place]
    return found[::-1]
