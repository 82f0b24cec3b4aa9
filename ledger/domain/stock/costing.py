"""What a batch cost, exact to the minor unit: every share adds up to its whole."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ledger.units.money import share_of


@dataclass(frozen=True)
class Outflow:
    """So much that left a lot, in the order in which it left."""

    key: int
    quantity: int


def cost_shares(cost_minor: int, whole: int, outflows: Sequence[Outflow]) -> dict[int, int]:
    """The share of a lot's cost that each outflow bears, by key.

    Cumulative rounding in the order the lot was used, so that a lot used up has given out its cost
    exactly. The method is first in, first out within one lot; lots are never averaged.
    """
    shares: dict[int, int] = {}
    used = 0  # more than the whole for a while, where a slip of the scale is corrected later
    for one in outflows:
        before, used = min(used, whole), used + one.quantity
        shares[one.key] = shares.get(one.key, 0) + share_of(cost_minor, whole, before, min(used, whole))
    return shares


def labour_cost(minutes: int, minor_per_hour: int) -> int:
    """What so many minutes of work cost, half up."""
    value = Fraction(minutes * minor_per_hour, 60)
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)
