"""Which bars fill an order: of the batches that may leave, the oldest first."""

from typing import NamedTuple

from ledger.errors import Refused
from ledger.rows.lot import lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.people import CustomerCard, customer_list
from ledger.rows.sell.order import bars_to_promise, open_order, order_lines


class Filling(NamedTuple):
    """An order with the bars that are proposed for it, by the batch code."""

    customer: CustomerCard
    bars: dict[str, int]
    short: tuple[tuple[str, int], ...]  # (product, bars) that no released batch has
    passed: tuple[str, ...]  # batches that would fill what is short, once they are released


def filling(rows: Rows, number: int) -> Filling:
    """What is proposed for an order; raises as `open_order`, and Refused for one with nothing to go."""
    order = open_order(rows, number)
    lines = [one for one in order_lines(rows, number).get(number, []) if one.open]
    if not lines:
        raise Refused(f"All of order {number} went already; see: soapledger order show {number}")
    stands = bars_to_promise(rows, {one.recipe_id for one in lines})
    here = [one for one in stands if one.verdict == "released"]
    left = {one.lot_id: one.bars for one in here}
    lots = lots_by_id(rows, [one.lot_id for one in stands])
    bars: dict[str, int] = {}
    short = []
    passed: dict[str, None] = {}
    for line in sorted(lines, key=lambda one: one.batch_id is None):
        need = line.open
        fitting = [one for one in stands if one.recipe_id == line.recipe_id and line.batch_id in (None, one.batch_id)]
        for one in (one for one in fitting if one.lot_id in left):
            part = min(need, left[one.lot_id])
            if part:
                left[one.lot_id] -= part
                need -= part
                code = lots[one.lot_id].code
                bars[code] = bars.get(code, 0) + part
        if need:
            short.append((line.batch or line.product, need))
            passed |= {lots[one.lot_id].code: None for one in fitting if one.verdict == "passed"}
    card = next(one for one in customer_list(rows) if one.id == order.customer_id)
    return Filling(card, bars, tuple(short), tuple(passed))
