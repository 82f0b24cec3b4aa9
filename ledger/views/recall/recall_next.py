"""What to look at next: other bars that share a lot with those asked about, the rarest lot first."""

from itertools import islice

from ledger.rows.batch import batches_by_id
from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.reached import bars_sharing, lots_taken
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall import LookNext

_SHOWN = 10
_BEHIND = 60  # lots behind the bars that are looked at, the nearest
_COMMON = 200  # things that a lot is in: olive and lye are in everything, and point at nothing


def look_next(rows: Rows, starts: Starts, reached: frozenset[int]) -> tuple[LookNext, ...]:
    """The batches to look at, those that share the rarest lot first; `reached` are those of the answer."""
    asked = [batch.id for batch in starts.bars_of]
    if not asked:
        return ()
    sharing = _sharing(rows, asked)
    rare = sorted((len(batches), lot) for lot, batches in sharing.items())
    found: dict[int, tuple[int, int]] = {}
    for many, lot in rare:
        for batch in reversed(sharing[lot]):
            if batch not in reached:
                found.setdefault(batch, (lot, many))
    shown = dict(list(found.items())[:_SHOWN])
    made = batches_by_id(rows, shown)
    lots = lots_by_id(rows, {lot for lot, _ in shown.values()})
    return tuple(
        LookNext(made[batch].code, made[batch].product, lots[lot].code, lots[lot].material, many)
        for batch, (lot, many) in shown.items()
        if batch in made and lot in lots
    )


def _sharing(rows: Rows, batches: list[int]) -> dict[int, list[int]]:
    """The rare lots behind batches, each with the batches of bars it is in.

    What is behind a common lot is in all that this is in, so it is common too and is not looked at.
    """
    found: dict[int, list[int] | None] = {}
    while batches and len(found) < _BEHIND:
        new = ((lot, made_by) for lot, made_by in lots_taken(rows, batches).items() if lot not in found)
        taken = dict(islice(new, _BEHIND - len(found)))
        found |= {lot: bars_sharing(rows, lot, _COMMON) for lot in taken}
        batches = [made_by for lot, made_by in taken.items() if made_by is not None and found[lot] is not None]
    return {lot: sharing for lot, sharing in found.items() if sharing is not None}
