"""Promised bars against those that are here or cure: which promise will be kept by its day, and why another will not.

Who is due first is served first; what is promised of one batch is kept for it before bars of any batch are handed out.
"""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple


class Wanted(NamedTuple):
    """Bars of a product, or of one batch of it, that are still to go to somebody by a day."""

    order: int
    recipe_id: int
    batch_id: int | None
    bars: int
    due_on: date


class Coming(NamedTuple):
    """Bars of one batch in the workshop; when they may leave."""

    recipe_id: int
    batch_id: int
    bars: int
    ready_on: date | None  # None: they are here and ready


class Part(NamedTuple):
    """Bars of one batch that are meant for a promise."""

    batch_id: int
    bars: int
    ready_on: date | None

    def late(self, due_on: date) -> int:
        """By how many days they come after the day; 0 for the day itself and before."""
        return max(0, (self.ready_on - due_on).days) if self.ready_on else 0


class Kept(NamedTuple):
    """A promise with the bars that are meant for it, and how many bars there are too few of."""

    wanted: Wanted
    parts: tuple[Part, ...]
    short: int

    @property
    def late(self) -> tuple[Part, ...]:
        """The bars that are ready only after the day."""
        return tuple(one for one in self.parts if one.late(self.wanted.due_on))

    @property
    def holds(self) -> bool:
        """Whether all of it will be there by its day."""
        return not self.short and not self.late


def kept(wanted: Sequence[Wanted], coming: Sequence[Coming]) -> tuple[Kept, ...]:
    """Hand out the bars there are, in the order the promises are due; the answer stands in the order asked.

    Of a product the bars that are ready first go first; of those ready alike, the first given.
    """
    first = sorted(coming, key=lambda one: one.ready_on or date.min)
    left = [one.bars for one in first]
    order = sorted(range(len(wanted)), key=lambda i: (wanted[i].batch_id is None, wanted[i].due_on, wanted[i].order, i))
    found: dict[int, Kept] = {}
    for index in order:
        want = wanted[index]
        need, parts = want.bars, []
        for place, one in enumerate(first):
            fits = one.recipe_id == want.recipe_id and want.batch_id in (None, one.batch_id)
            part = min(need, left[place]) if fits else 0
            if part:
                left[place] -= part
                need -= part
                parts.append(Part(one.batch_id, part, one.ready_on))
        found[index] = Kept(want, tuple(parts), need)
    return tuple(found[index] for index in range(len(wanted)))
