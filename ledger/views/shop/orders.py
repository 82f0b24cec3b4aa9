"""Orders as they stand: what is still to go, what went, and what will be late."""

from datetime import date
from typing import Literal, NamedTuple

from ledger.errors import BadInput
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.order import OrderLineRow, OrderRow, order_lines, orders
from ledger.views.stock.promised import Promise, promises

Standing = Literal["open", "gone", "ended"]


class OrderLineView(NamedTuple):
    """A line of an order."""

    product: str
    recipe: str
    batch: str | None
    bars: int
    gone: int
    still: int
    price_minor: int | None


class OrderView(NamedTuple):
    """One order with its lines; `words` say what will be late and why."""

    number: int
    customer: str
    on: date
    due_on: date
    stands: Standing
    bars: int
    gone: int
    still: int
    late: bool
    note: str | None
    ended_on: date | None
    ended_by: str | None
    reason: str | None
    lines: tuple[OrderLineView, ...]
    words: tuple[str, ...]
    customer_id: int
    entry: int


def order_views(rows: Rows, on: date, *, customer_id: int | None = None, number: int | None = None) -> list[OrderView]:
    """Every order, the open ones first by the day they are due; of one customer, or one, where told."""
    found = orders(rows, customer_id=customer_id, number=number)
    lines = order_lines(rows, number)
    late: dict[int, list[Promise]] = {}
    waits = any(line.open for one in found if not one.ended_on for line in lines.get(one.id, ()))
    for one in promises(rows, on) if waits else ():  # what is late hangs on every open order, and on no other
        late.setdefault(one.order, []).append(one)
    names = contacts(rows, sorted({one.customer_id for one in found}))
    views = [_view(one, names[one.customer_id].name, lines.get(one.id, []), late.get(one.id, [])) for one in found]
    return sorted(views, key=lambda one: one.stands != "open")


def order_view(rows: Rows, number: int, on: date) -> OrderView:
    """One order. Raises BadInput for one that is not there."""
    found = order_views(rows, on, number=number)
    if not found:
        raise BadInput(f"There is no order {number}; see them all: soapledger order list --all")
    return found[0]


def _view(order: OrderRow, name: str, lines: list[OrderLineRow], late: list[Promise]) -> OrderView:
    still = sum(one.open for one in lines)
    stands: Standing = "ended" if order.ended_on else "open" if still else "gone"
    return OrderView(
        order.id,
        name,
        order.on,
        order.due_on,
        stands,
        sum(one.bars for one in lines),
        sum(one.gone for one in lines),
        still if stands == "open" else 0,
        any(one.late for one in late),
        order.note,
        order.ended_on,
        order.ended_by,
        order.reason,
        tuple(
            OrderLineView(one.product, one.recipe_code, one.batch, one.bars, one.gone, one.open, one.price_minor)
            for one in lines
        ),
        tuple(word for one in late for word in one.words),
        order.customer_id,
        order.entry,
    )
