"""What to look at next: other bars that share a lot with those asked about, the rarest lot first."""

from ledger.rows.batch import batches_by_id
from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.reached import bars_sharing, lots_behind
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
    sharing = {lot: bars_sharing(rows, lot, _COMMON) for lot in lots_behind(rows, asked, _BEHIND)}
    rare = sorted((len(batches), lot) for lot, batches in sharing.items() if batches is not None)
    found: dict[int, tuple[int, int]] = {}
    for many, lot in rare:
        for batch in reversed(sharing[lot] or ()):
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
