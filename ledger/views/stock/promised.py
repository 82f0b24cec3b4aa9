"""What is promised of each product, and which promise will not be kept by its day."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.stock.promised import Coming, Kept, Part, Wanted, kept
from ledger.rows.batch import BatchRow, batches_by_id
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.order import OrderLineRow, OrderRow, bars_to_promise, order_lines, orders
from ledger.rows.sell.product import materials_of_recipes
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.units.words import Verdict

OUT_OF_SIGHT = ("on hold", "rejected")  # bars that may never leave keep no promise


class Promise(NamedTuple):
    """Bars of one line of an open order that are still to go."""

    order: int
    customer_id: int
    customer: str
    product: str
    recipe_id: int
    batch: str | None
    bars: int
    due_on: date
    short: int
    ready_on: date | None  # of the last bars meant for it; None where they are ready
    late: bool
    words: tuple[str, ...]  # why it will not be kept by its day; none where it will
    late_from: tuple[tuple[str, str], ...] = ()  # (batch, words) of bars that come too late


def promises(rows: Rows, on: date) -> tuple[Promise, ...]:
    """Every bar that is promised and still to go, the first due first, against the bars that are here on a day."""
    going_on = [one for one in orders(rows) if not one.ended_on]
    lines = order_lines(rows, among=[one.id for one in going_on])
    still = [(order, line) for order in going_on for line in lines.get(order.id, ()) if line.open]
    if not still:
        return ()
    come = bars_to_promise(rows, {line.recipe_id for _, line in still})
    batches = batches_by_id(rows, {one.batch_id for one in come})
    coming = [
        Coming(one.recipe_id, one.batch_id, one.bars, _ready(batches[one.batch_id], one.verdict, on))
        for one in come
        if one.verdict not in OUT_OF_SIGHT
    ]
    wanted = [Wanted(order.id, line.recipe_id, line.batch_id, line.open, order.due_on) for order, line in still]
    names = contacts(rows, sorted({order.customer_id for order, _ in still}))
    answers = kept(wanted, coming)
    return tuple(
        _promise(order, line, names[order.customer_id].name, one, batches, on)
        for (order, line), one in zip(still, answers, strict=True)
    )


def _ready(batch: BatchRow, verdict: Verdict | None, on: date) -> date | None:
    """The day bars may leave; None where they are released, or cured and only to be packed."""
    if verdict == "released" or batch.ready_on is None or batch.ready_on <= on:
        return None
    return batch.ready_on


def _promise(
    order: OrderRow, line: OrderLineRow, name: str, found: Kept, batches: dict[int, BatchRow], on: date
) -> Promise:
    ready = [one.ready_on for one in found.parts if one.ready_on]
    return Promise(
        order.id,
        order.customer_id,
        name,
        line.product,
        line.recipe_id,
        line.batch,
        line.open,
        order.due_on,
        found.short,
        max(ready, default=None),
        not found.holds or order.due_on < on,
        tuple(_why(order, line, name, found, batches, on)),
        tuple(
            (
                batches[one.batch_id].code,
                f"{_head(order, name)} {_late(one, _what(line), batches[one.batch_id], order.due_on)}",
            )
            for one in found.late
        ),
    )


def _head(order: OrderRow, name: str) -> str:
    return f"Order {order.id}, {name}, due {show_date(order.due_on)}:"


def _what(line: OrderLineRow) -> str:
    return f"{line.product}{f' ({line.batch})' if line.batch else ''}"


def _why(
    order: OrderRow, line: OrderLineRow, name: str, found: Kept, batches: dict[int, BatchRow], on: date
) -> list[str]:
    head, what = _head(order, name), _what(line)
    words = [f"{head} {_late(one, what, batches[one.batch_id], order.due_on)}" for one in found.late]
    if found.short:
        few = "is" if found.short == 1 else "are"
        words.append(f"{head} {count(found.short, 'bar')} of {what} {few} too few; none here or curing is left for it.")
    if not words and order.due_on < on:
        days = (on - order.due_on).days
        words.append(f"{head} {count(line.open, 'bar')} of {what} {count(days, 'day')} overdue, and here.")
    return words


def _late(part: Part, what: str, batch: BatchRow, due_on: date) -> str:
    assert part.ready_on is not None
    come, days = "comes" if part.bars == 1 else "come", count(part.late(due_on), "day")
    return (
        f"{count(part.bars, 'bar')} of {what} {come} {days} late, from batch {batch.code}, "
        f"ready {show_date(part.ready_on)}."
    )


def promised_by_material(rows: Rows) -> dict[int, int]:
    """How many bars of each product are promised and still to go, by the row number of its material."""
    going_on = [one.id for one in orders(rows) if not one.ended_on]
    lines = order_lines(rows, among=going_on)
    still = [one for number in going_on for one in lines.get(number, ()) if one.open]
    if not still:
        return {}
    materials = materials_of_recipes(rows)
    total: dict[int, int] = {}
    for one in still:
        material = materials[one.recipe_id]
        total[material] = total.get(material, 0) + one.open
    return total


def late_by_batch(found: Sequence[Promise]) -> dict[str, tuple[str, ...]]:
    """Which promises the bars of a batch come too late for, in words, by the batch code."""
    late: dict[str, tuple[str, ...]] = {}
    for one in found:
        for batch, words in one.late_from:
            late[batch] = (*late.get(batch, ()), words)
    return late
