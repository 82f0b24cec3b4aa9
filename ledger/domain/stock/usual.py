"""Whether what is booked lies far from what was ever booked before: most often a slip of the decimal point."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

TIMES = 10  # one place of the decimal point; common practice, no source
AT_ONCE_MG = 200_000_000  # more than a small workshop takes of anything at once, 200 kg: common practice, no source


class Came(NamedTuple):
    """So much (mg or pieces) that came at once, and what it cost; None where that was never learnt."""

    quantity: int
    cost_minor: int | None


def far_more(quantity: int, earlier: Sequence[Came]) -> int | None:
    """The most that ever came at once where a quantity is ten times that or more; None else, and where none came."""
    most = max((one.quantity for one in earlier), default=None)
    return most if most is not None and quantity >= TIMES * most else None


def price_far_off(new: Came, earlier: Sequence[Came]) -> bool:
    """Whether its price is a tenth of the lowest so far or less, or ten times the highest or more.

    What was free or of unknown cost has no price.
    """
    prices = [Fraction(one.cost_minor, one.quantity) for one in earlier if one.cost_minor and one.quantity > 0]
    if not prices or not new.cost_minor or new.quantity <= 0:
        return False
    return times_off(Fraction(new.cost_minor, new.quantity), min(prices), max(prices))


def times_off(found: Fraction | int, low: Fraction | int, high: Fraction | int, times: int = TIMES) -> bool:
    """Whether a figure is so many times the highest known or more, or so small a part of the lowest or less."""
    return found * times <= low or found >= high * times
