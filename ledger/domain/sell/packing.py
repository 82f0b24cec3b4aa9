"""How many bars of a product to take to a stall."""

from collections.abc import Sequence

DAYS = 4  # that are looked at
_MORE = 4  # one bar more for each so many of the best day


def proposal(sold: Sequence[int], ready: int, promised: int) -> int:
    """The best of the last days there and a quarter more, of what is ready and not promised; none where none sold.

    A day that sold out would have sold more, so the best counts and something is added (ours, no source).
    """
    best = max(sold, default=0)
    return max(0, min(best + -(-best // _MORE), ready - promised))
