"""What a recall reaches, the ways to it, and how much of the suspect lots is in each thing."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ledger.domain.recall.dilution import Came, Diluted, Pot, diluted
from ledger.domain.stock.graph import Closure, Graph, Node
from ledger.rows.batch import BatchRow
from ledger.rows.lot import LotRow
from ledger.rows.opened import Rows
from ledger.rows.reached import Given, Reached, reached


class Starts(NamedTuple):
    """What is suspect: lots, batches themselves, and batches of which only the labels are."""

    lots: tuple[LotRow, ...] = ()
    bars_of: tuple[BatchRow, ...] = ()
    labelled: tuple[BatchRow, ...] = ()

    @property
    def batches(self) -> tuple[BatchRow, ...]:
        """The batches asked for themselves, or for their labels."""
        return (*self.bars_of, *self.labelled)

    @property
    def nodes(self) -> tuple[Node, ...]:
        """The same as places of the graph."""
        return (*(("lot", lot.id) for lot in self.lots), *(("batch", batch.id) for batch in self.batches))


class Reach(NamedTuple):
    """Everything reached."""

    found: Reached
    closure: Closure
    inside: Diluted

    @property
    def lots(self) -> tuple[int, ...]:
        """The lots, by their row numbers, nearest first."""
        return self.closure.of_kind("lot")

    @property
    def batches(self) -> tuple[int, ...]:
        """The batches, likewise."""
        return self.closure.of_kind("batch")

    def wrapped_in(self, batch: int) -> int:
        """How many pieces of suspect wrapping a batch took."""
        took = self.found.took[batch].items()
        return sum(quantity for lot, quantity in took if self.found.lots[lot][0] == "packaging")


def reach(rows: Rows, starts: Starts) -> Reach:
    """Everything that the suspect lots and batches went into, the starts included."""
    labelled = {batch.id: batch.yield_lot_id for batch in starts.labelled if batch.yield_lot_id is not None}
    found = reached(rows, [lot.id for lot in starts.lots], [batch.id for batch in starts.bars_of], labelled)
    graph = Graph(
        consumed=[(lot, batch) for batch, took in found.took.items() for lot in took],
        yielded=[(batch, given.lot_id) for batch, gave in found.gave.items() for given in gave],
    )
    pots = {batch: _pot(found, batch) for batch in found.took}
    suspect = {lot.id for lot in starts.lots if lot.kind != "packaging"}
    inside = diluted(pots, suspect, {batch.id for batch in starts.bars_of})
    return Reach(found, graph.downstream(starts.nodes), inside)


class Way(NamedTuple):
    """The ends of the shortest way to a lot or batch; the whole of it can be thousands of drums long."""

    first: str
    last: str  # the code before it, its own where it was asked for itself
    steps: int  # from code to code: bars have that of their batch
    after: str | None  # the batch before it
    asked: bool


def ways(found: Reach, lots: Mapping[int, LotRow], made: Mapping[int, BatchRow]) -> dict[Node, Way]:
    """The ends of the way to everything reached, in one pass from the nearest on."""
    ends: dict[Node, Way] = {}
    codes: dict[Node, str] = {}
    for node in found.closure.nodes:
        kind, number = node
        code = codes[node] = lots[number].code if kind == "lot" else made[number].code
        before = found.closure.paths.before(node)
        if before is None:
            ends[node] = Way(code, code, 0, None, True)
            continue
        way, other = ends[before], codes[before] != code
        after = codes[before] if kind == "lot" else way.after
        ends[node] = Way(way.first, codes[before] if other else way.last, way.steps + other, after, False)
    return ends


def _pot(found: Reached, batch: int) -> Pot:
    process, whole = found.whole.get(batch, ("combine", 0))
    took = {lot: quantity for lot, quantity in found.took[batch].items() if found.lots[lot][0] != "packaging"}
    return Pot(took, whole, _came(found.gave.get(batch, ())), process == "infusion")


def _came(gave: Sequence[Given]) -> dict[int, Came]:
    return {one.lot_id: Came(one.quantity, one.mass_mg if one.kind == "soap" else one.quantity) for one in gave}
