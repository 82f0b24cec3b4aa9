"""Which batches bars may be of, where somebody counted them by product and the oldest was assumed."""

from collections.abc import Iterable, Mapping

Pairs = Iterable[tuple[int, int]]


def together(pairs: Pairs) -> dict[int, frozenset[int]]:
    """The lots whose bars may have been taken for each other, by each of them, itself included."""
    groups: dict[int, set[int]] = {}
    for one, other in pairs:
        joined = groups.get(one, {one}) | groups.get(other, {other})
        for lot in joined:
            groups[lot] = joined
    return {lot: frozenset(group) for lot, group in groups.items()}


def candidates(
    lots: Iterable[int], standing: Mapping[int, int], pairs: Pairs, *, any_of_them: bool
) -> dict[int, frozenset[int]]:
    """The other lots that bars booked on each of some lots may as well be of; an empty set where there is none.

    `standing` are the bars of the product that stood there, by the lot as booked; `pairs` what had been assumed of them
    before. Where nobody noted which of those that stood there were taken (`any_of_them`), each may have been; where all
    were, or the batch was read from the bars, only what had been taken for one another before.
    """
    groups = together(pairs)
    if any_of_them:
        every = frozenset(lot for one, bars in standing.items() if bars for lot in groups.get(one, {one}))
        return {lot: every - {lot} for lot in lots}
    return {lot: groups.get(lot, frozenset()) - {lot} for lot in lots}


def first_out(wanted: int, standing: Mapping[int, int]) -> dict[int, int]:
    """So many bars from the lots in the order they stand, the oldest first; what is not there is not taken."""
    taken = {}
    for lot, bars in standing.items():
        if number := min(bars, wanted):
            taken[lot] = number
            wanted -= number
    return taken
