"""How many bars are proposed for a stall, at the edges."""

import pytest

from ledger.domain.sell.packing import proposal


@pytest.mark.parametrize(
    ("sold", "ready", "promised", "take"),
    [
        ((), 10, 0, 0),  # never there
        ((0, 0), 10, 0, 0),
        ((8, 4), 20, 0, 10),  # 8 and a quarter
        ((1,), 20, 0, 2),  # a quarter of one is rounded up
        ((9,), 20, 0, 12),  # 9 + 2.25
        ((8,), 10, 0, 10),
        ((8,), 9, 0, 9),
        ((8,), 20, 10, 10),
        ((8,), 20, 11, 9),
        ((8,), 5, 9, 0),
    ],
)
def test_the_best_day_and_a_quarter(sold: tuple[int, ...], ready: int, promised: int, take: int) -> None:
    assert proposal(sold, ready, promised) == take
