"""What is asked before bars go to a customer because of the orders that are open."""

from collections.abc import Sequence
from typing import NamedTuple

from ledger.domain.stock.promised import Coming, Wanted, kept
from ledger.rows.lot import LotRow
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.order import OrderLineRow, OrderRow, bars_to_promise, order_lines, orders
from ledger.rows.sell.tax import recipes_of
from ledger.units.dates import show_date
from ledger.units.wording import count


class _Going(NamedTuple):
    recipe_id: int
    batch_id: int
    lot_id: int
    bars: int


def order_doubts(rows: Rows, bars: Sequence[tuple[LotRow, int]], filled: int | None) -> list[str]:
    """Sentences where bars go that others wait for, or more than the order that they fill still waits for."""
    found = [one for one in orders(rows) if not one.ended_on]
    if not found:
        return []
    recipes = recipes_of(rows, [lot.id for lot, _ in bars])
    going = [
        _Going(recipes[lot.id], lot.batch_id, lot.id, number)
        for lot, number in bars
        if lot.id in recipes and lot.batch_id is not None
    ]
    touched = {one.recipe_id for one in going}
    lines = order_lines(rows, among=[one.id for one in found])
    still = [
        (order, line) for order in found for line in lines.get(order.id, ()) if line.open and line.recipe_id in touched
    ]
    own = [one for one in still if one[0].id == filled]
    others = [one for one in still if one[0].id != filled]
    return [*_promised_to_others(rows, going, others), *_too_many(going, own)]


def _promised_to_others(
    rows: Rows, going: Sequence[_Going], others: Sequence[tuple[OrderRow, OrderLineRow]]
) -> list[str]:
    """Whose promise has fewer released bars left for it than before."""
    if not others:
        return []
    here = [one for one in bars_to_promise(rows, {line.recipe_id for _, line in others}) if one.verdict == "released"]
    leave = {one.lot_id: one.bars for one in going}
    wanted = [_wanted(order, line) for order, line in others]
    before = kept(wanted, [Coming(one.recipe_id, one.batch_id, one.bars, None) for one in here])
    after = kept(
        wanted,
        [Coming(one.recipe_id, one.batch_id, max(0, one.bars - leave.get(one.lot_id, 0)), None) for one in here],
    )
    names = contacts(rows, sorted({order.customer_id for order, _ in others}))
    said = []
    for (order, line), had, has in zip(others, before, after, strict=True):
        if has.short > had.short:
            are, left = "is" if line.open == 1 else "are", line.open - has.short
            said.append(
                f"{count(line.open, 'bar')} of {_what(line)} {are} promised to {names[order.customer_id].name} "
                f"(order {order.id}, by {show_date(order.due_on)}), "
                f"and {f'only {left}' if left else 'none'} would be left for it."
            )
    return said


def _too_many(going: Sequence[_Going], own: Sequence[tuple[OrderRow, OrderLineRow]]) -> list[str]:
    """What more goes of than the order that is filled waits for; bars of a batch fill its own line first."""
    answers = kept(
        [_wanted(order, line) for order, line in own],
        [Coming(one.recipe_id, one.batch_id, one.bars, None) for one in going],
    )
    used = [(line, sum(part.bars for part in one.parts)) for (_, line), one in zip(own, answers, strict=True)]
    said = []
    for order, line in own:
        # Where any batch of the product will do, all of it is counted together; else each batch by itself.
        wide = any(other.batch_id is None for _, other in own if other.recipe_id == line.recipe_id)
        if wide and line.batch_id is not None:
            continue
        fits = [one.bars for one in going if one.recipe_id == line.recipe_id and line.batch_id in (None, one.batch_id)]
        taken = sum(
            bars
            for other, bars in used
            if other.recipe_id == line.recipe_id and (wide or other.batch_id == line.batch_id)
        )
        if sum(fits) > taken:
            waits = f"Order {order.id} waits for {count(taken, 'bar')} of {_what(line)}"
            said.append(f"{waits}; {sum(fits)} go.")
    return said


def _wanted(order: OrderRow, line: OrderLineRow) -> Wanted:
    return Wanted(order.id, line.recipe_id, line.batch_id, line.open, order.due_on)


def _what(line: OrderLineRow) -> str:
    return f"batch {line.batch}" if line.batch else line.product
