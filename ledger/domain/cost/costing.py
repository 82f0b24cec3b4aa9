"""What work costs, and what each bar bears of a cost: every share adds up to its whole."""

from fractions import Fraction

from ledger.units.money import half_up, share_out


def labour_cost(minutes: int, minor_per_hour: int) -> int:
    """What so many minutes of work cost, half up."""
    return half_up(Fraction(minutes * minor_per_hour, 60))


def each_bar(to_bars_minor: int, bars: int) -> tuple[int, ...]:
    """What each bar costs; the figures add up to what all of them bear."""
    return tuple(share_out(to_bars_minor, [1] * bars)) if bars else ()
