"""A shop's count by product: of which batches the bars are that are gone, as well as can be told."""

from collections.abc import Sequence
from typing import NamedTuple


class Lying(NamedTuple):
    """Bars of one lot that stood there before the count, the oldest lot first."""

    lot_id: int
    bars: int


class Gone(NamedTuple):
    """Bars of one lot that are gone; of which others they may as well be, where the batch is assumed."""

    lot_id: int
    bars: int
    others: tuple[int, ...] = ()


class Counted(NamedTuple):
    """What a count says: what was sold, and what the shop lost."""

    sold: tuple[Gone, ...]
    missing: tuple[Gone, ...]


def counted(standing: Sequence[Lying], *, still: int, missing: int = 0, also: Sequence[int] = ()) -> Counted:
    """The bars that are gone, the oldest first: sold before lost.

    Where all of it went one way and nothing is left, or one batch alone stood there, nothing is assumed, but for lots
    (`also`) of which bars may still stand there since an earlier count assumed others. The caller has seen that `still`
    and `missing` together are not above what stood there.
    """
    there = sum(one.bars for one in standing)
    sold = there - still - missing
    known = not also and (len(standing) < 2 or [still, missing, sold].count(0) > 1)
    candidates = (*(one.lot_id for one in standing), *also)
    left = [[one.lot_id, one.bars] for one in standing]

    def take(number: int) -> tuple[Gone, ...]:
        found = []
        for one in left:
            part = min(number, one[1])
            one[1] -= part
            number -= part
            if part:
                others = () if known else tuple(dict.fromkeys(lot for lot in candidates if lot != one[0]))
                found.append(Gone(one[0], part, others))
        return tuple(found)

    return Counted(take(sold), take(missing))
