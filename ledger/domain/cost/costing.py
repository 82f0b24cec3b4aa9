"""What a batch cost, exact to the minor unit: every share adds up to its whole."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.units.money import half_up, share_of, share_out
from ledger.units.words import Way


class Outflow(NamedTuple):
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


class Move(NamedTuple):
    """One movement of a lot that stands: so much came, or left where it is below zero."""

    key: int
    quantity: int
    way: Way


def lot_shares(cost_minor: int, moves: Sequence[Move]) -> dict[int, int]:
    """The share of a lot's cost that each movement out of it bears, by key; none of a lot of which nothing came.

    What comes back from where it was consumed mends a weight and is no stock that came; bars that only changed their
    place are left out of `moves`.
    """
    whole = sum(one.quantity for one in moves if one.quantity > 0 and one.way != "consumed")
    outflows = [Outflow(one.key, -one.quantity) for one in moves if one.quantity < 0 or one.way == "consumed"]
    return cost_shares(cost_minor, whole, outflows) if whole else {}


def labour_cost(minutes: int, minor_per_hour: int) -> int:
    """What so many minutes of work cost, half up."""
    return half_up(Fraction(minutes * minor_per_hour, 60))


def bars_and_offcuts(total_minor: int, wrapping_minor: int, *, bars_mg: int, offcuts_mg: int) -> tuple[int, int]:
    """What the bars of a batch and its offcuts bear: by mass, but for the wrapping, which is on the bars.

    Bars that were not weighed, and those of a batch without offcuts, bear it all.
    """
    if not offcuts_mg or not bars_mg:
        return total_minor, 0
    to_bars, to_offcuts = share_out(total_minor - wrapping_minor, [bars_mg, offcuts_mg])
    return to_bars + wrapping_minor, to_offcuts


def each_bar(to_bars_minor: int, bars: int) -> tuple[int, ...]:
    """What each bar costs; the figures add up to what all of them bear."""
    return tuple(share_out(to_bars_minor, [1] * bars)) if bars else ()
