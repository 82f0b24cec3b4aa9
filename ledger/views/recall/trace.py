"""From a code on a bar back to every supplier's lot, or on from a lot to every bar."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.domain.stock.graph import Node, NodeKind
from ledger.errors import BadInput
from ledger.rows.batch import BatchRow, batches, find_batch
from ledger.rows.lot import LotRow, all_lots, find_lot
from ledger.rows.movement import BackOnSale, back_on_sale, ledger_graph
from ledger.units.codes import looks_like_batch_code, looks_like_lot_code, supplier_number_key


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


def trace(rows: sqlite3.Connection, code: str, *, forward: bool = False) -> Trace:
    """Trace a batch code, a lot code, or a supplier's number that is one lot's.

    Raises like `find_batch` and `find_lot`, and BadInput for a number of several lots.
    """
    lots = {lot.id: lot for lot in all_lots(rows)}
    made = {batch.id: batch for batch in batches(rows)}
    if looks_like_batch_code(code):
        batch = find_batch(rows, code)
        start: Node = ("batch", batch.id)
    else:
        start = ("lot", _lot_meant(rows, code, lots).id)
    graph = ledger_graph(rows)
    steps: list[TraceStep] = []
    seen: set[Node] = set()
    waiting: list[tuple[int, Node, Node | None]] = [(0, start, None)]
    while waiting:
        depth, node, before = waiting.pop()
        again = node in seen
        seen.add(node)
        steps.append(_step(rows, depth, node, before, lots, made, again))
        if not again:
            following = graph.children(node) if forward else graph.parents(node)
            waiting += [(depth + 1, one, node) for one in reversed(following)]
    own = [lots[number] for kind, number in seen if kind == "lot"]
    return Trace(
        code=steps[0].code,
        what=steps[0].what,
        forward=forward,
        steps=tuple(steps),
        supplier_lots=tuple(lot.code for lot in sorted(own, key=lambda lot: lot.id) if lot.supplier_id is not None),
        batches=tuple(sorted(made[number].code for kind, number in seen if kind == "batch")),
        back_on_sale=back_on_sale(rows, sorted({*(lot.id for lot in own), *_bars_of(start, made)})),
    )


def _lot_meant(rows: sqlite3.Connection, text: str, lots: dict[int, LotRow]) -> LotRow:
    """The lot of our own code, else the one that has the number of its supplier."""
    key = supplier_number_key(text)
    found = [
        lot for lot in lots.values() if key and lot.supplier_number and supplier_number_key(lot.supplier_number) == key
    ]
    if looks_like_lot_code(text) or not found:
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
    rows: sqlite3.Connection,
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
        quantity = abs(
            rows.execute(
                "SELECT coalesce(sum(quantity), 0) FROM movement WHERE lot_id = ? AND batch_id = ?", (lot_id, batch_id)
            ).fetchone()[0]
        )
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
