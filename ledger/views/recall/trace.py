"""From a code on a bar back to every supplier's lot, or on from a lot to every bar."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from ledger.domain.stock.graph import Node, NodeKind
from ledger.errors import BadInput
from ledger.rows.bars import BackOnSale, OnTheShelf, back_on_sale, decided_on_the_shelf
from ledger.rows.batch import BatchRow, batches_by_id, find_batch
from ledger.rows.lot import LotRow, find_lot, lots_by_id, lots_numbered
from ledger.rows.movement import graph_from, moved_among
from ledger.rows.opened import Rows
from ledger.units.codes import looks_like_batch_code, looks_like_lot_code
from ledger.views.recall.recall_assumed import AssumedBars, assumed_bars


@dataclass(frozen=True)
class TraceStep:
    """One lot or batch on the way; `depth` counts the steps, quantity is what passed along the step."""

    depth: int
    kind: NodeKind
    code: str
    what: str
    on: date
    supplier: str | None
    supplier_lot: str | None
    number_unknown: bool  # the supplier's number was never learnt
    quantity: int | None
    pieces: bool
    status: str
    seen_before: bool  # its own steps stand further up


@dataclass(frozen=True)
class Trace:
    """The whole way, depth first."""

    code: str
    what: str
    forward: bool
    steps: tuple[TraceStep, ...]
    supplier_lots: tuple[str, ...]
    batches: tuple[str, ...]
    back_on_sale: tuple[BackOnSale, ...]  # of all bars on the way, and of the batch that was asked for
    on_the_shelf: tuple[OnTheShelf, ...]  # likewise, of what came back and was kept there or thrown away
    may_be: tuple[AssumedBars, ...] = ()  # bars that may be of them, though they are booked on another batch


def trace(rows: Rows, code: str, *, forward: bool = False) -> Trace:
    """Trace a batch code, a lot code, or a supplier's number that is one lot's.

    Raises like `find_batch` and `find_lot`, and BadInput for a number of several lots.
    """
    if looks_like_batch_code(code):
        start: Node = ("batch", find_batch(rows, code).id)
    else:
        start = ("lot", _lot_meant(rows, code).id)
    graph = graph_from(rows, [start], "down" if forward else "up")
    reached = graph.downstream([start]) if forward else graph.upstream([start])
    lots = lots_by_id(rows, reached.of_kind("lot"))
    made = batches_by_id(rows, reached.of_kind("batch"))
    moved = moved_among(rows, made)
    steps: list[TraceStep] = []
    seen: set[Node] = set()
    waiting: list[tuple[int, Node, Node | None]] = [(0, start, None)]
    while waiting:
        depth, node, before = waiting.pop()
        again = node in seen
        seen.add(node)
        steps.append(_step(moved, depth, node, before, lots, made, again))
        if not again:
            following = graph.children(node) if forward else graph.parents(node)
            waiting += [(depth + 1, one, node) for one in reversed(following)]
    bars = sorted({*lots, *_bars_of(start, made)})
    return Trace(
        code=steps[0].code,
        what=steps[0].what,
        forward=forward,
        steps=tuple(steps),
        supplier_lots=tuple(lot.code for _, lot in sorted(lots.items()) if lot.supplier_id is not None),
        batches=tuple(sorted(batch.code for batch in made.values())),
        back_on_sale=back_on_sale(rows, bars),
        on_the_shelf=decided_on_the_shelf(rows, bars),
        may_be=assumed_bars(rows, bars),
    )


def _lot_meant(rows: Rows, text: str) -> LotRow:
    """The lot of our own code, else the one that has the number of its supplier."""
    found = () if looks_like_lot_code(text) else lots_numbered(rows, text)
    if not found:
        return find_lot(rows, text)
    if len(found) > 1:
        listed = ", ".join(f"{lot.code} {lot.material}" for lot in found)
        raise BadInput(f"Several lots have the number '{text}': {listed}. Name the one meant by our own code.")
    return found[0]


def _bars_of(start: Node, made: dict[int, BatchRow]) -> tuple[int, ...]:
    """The bars of the batch a trace begins with; going back, they are no step of the way."""
    lot_id = made[start[1]].yield_lot_id if start[0] == "batch" else None
    return () if lot_id is None else (lot_id,)


def _step(
    moved: Mapping[tuple[int, int], int],
    depth: int,
    node: Node,
    before: Node | None,
    lots: dict[int, LotRow],
    made: dict[int, BatchRow],
    again: bool,
) -> TraceStep:
    kind, number = node
    quantity, pieces = None, False
    if before is not None:
        lot_id, batch_id = (number, before[1]) if kind == "lot" else (before[1], number)
        quantity = moved.get((lot_id, batch_id), 0)
        pieces = lots[lot_id].counted
    if kind == "batch":
        batch = made[number]
        return TraceStep(
            depth, kind, batch.code, f"{batch.product} ({batch.process})", batch.on, None, None, False, quantity,
            pieces, batch.status, again,
        )  # fmt: skip
    lot = lots[number]
    return TraceStep(
        depth, kind, lot.code, lot.material, lot.on, lot.supplier, lot.supplier_number, lot.number_unknown, quantity,
        pieces, lot.status, again,
    )  # fmt: skip
