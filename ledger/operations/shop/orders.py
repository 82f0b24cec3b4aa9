"""Orders: bars promised to a customer by a day, changed, and ended by a person."""

from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.rows.batch import find_batch
from ledger.rows.opened import Rows
from ledger.rows.people import customer_by_code
from ledger.rows.recipe import recipe_by_code
from ledger.rows.sell.order import OrderRow, open_order, order_lines
from ledger.storage.book import Book
from ledger.storage.tables.sale import CustomerOrder, OrderEnd, OrderLine
from ledger.units.codes import looks_like_batch_code
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.sale.words import whom_kept


class Thing(NamedTuple):
    """What a word of an order means: a product, or one batch of it, cut or not."""

    recipe_id: int
    lot_id: int | None
    batch_id: int | None
    name: str

    @property
    def same_as(self) -> tuple[int, str]:
        """What tells it from another."""
        return self.recipe_id, self.name


def thing_meant(rows: Rows, text: str) -> Thing:
    """The product or the batch meant by a word. Raises BadInput or Refused for nothing known, or no bars."""
    if not looks_like_batch_code(text):
        recipe = recipe_by_code(rows, text)
        return Thing(recipe.id, None, None, recipe.name)
    batch = find_batch(rows, text)
    if not batch.soap or batch.recipe_code is None:
        raise Refused(f"Batch {batch.code} gives no bars of a product, so none can be promised of it.")
    if batch.discarded or batch.lot_status == "rejected":
        raise Refused(f"The bars of batch {batch.code} are {batch.status}; none can be promised of it.")
    recipe_id = recipe_by_code(rows, batch.recipe_code).id
    cut = batch.yield_lot_id
    return Thing(recipe_id, cut, None if cut else batch.id, f"{batch.product} {batch.code}")


def _each(rows: Rows, bars: Mapping[str, int]) -> list[tuple[Thing, int]]:
    found: dict[tuple[int, str], tuple[Thing, int]] = {}
    for text, number in bars.items():
        thing = thing_meant(rows, text)
        if thing.same_as in found:
            raise BadInput(f"{thing.name} stands twice; write one number for it.")
        found[thing.same_as] = (thing, number)
    return list(found.values())


def _line(order: int, thing: Thing, bars: int, price_minor: int | None) -> OrderLine:
    return OrderLine(
        order_id=order,
        recipe_id=thing.recipe_id,
        lot_id=thing.lot_id,
        batch_id=thing.batch_id,
        bars=bars,
        price_minor=price_minor,
    )


def add_order(
    book: Book,
    customer: str,
    bars: Mapping[str, int],
    *,
    on: date,
    due_on: date,
    price_minor: int | None = None,
    note: str | None = None,
) -> int:
    """Promise bars to a customer by a day and return the order's number.

    Raises BadInput for no bars at all or a day before that of the promise.
    """
    if due_on < on:
        raise BadInput(f"It is due on {show_date(due_on)}, before the order of {show_date(on)}; look at --due.")
    with book.write("order add") as tx:
        card = customer_by_code(tx.rows, customer)
        each = _each(tx.rows, bars)
        for thing, number in each:
            if number <= 0:
                raise BadInput(f"How many bars of {thing.name}? Write a number above zero.")
        order = tx.add(CustomerOrder(customer_id=card.id, on=on, due_on=due_on, note=note))
        assert order.id is not None
        tx.add_all(_line(order.id, thing, number, price_minor) for thing, number in each)
        tx.say(f"Order {order.id} from {whom_kept(card)}: {count(sum(bars.values()), 'bar')} by {show_date(due_on)}.")
    return order.id


def change_order(book: Book, number: int, bars: Mapping[str, int]) -> None:
    """Add bars to an order, or take some from it (below zero).

    Raises Refused for more taken away than are still to go, BadInput for nothing changed.
    """
    with book.write("order change") as tx:
        order = open_order(tx.rows, number)
        lines = order_lines(tx.rows, number).get(number, [])
        rows = []
        for thing, change in _each(tx.rows, bars):
            if not change:
                raise BadInput(f"By how many bars of {thing.name}? Write it like +4 or -4.")
            batch = thing.name.rsplit(" ", 1)[-1] if thing.lot_id or thing.batch_id else None
            line = next((one for one in lines if (one.recipe_id, one.batch) == (thing.recipe_id, batch)), None)
            still = line.open if line else 0
            if -change > still:
                raise Refused(
                    f"{count(still, 'bar')} of {thing.name} {'is' if still == 1 else 'are'} still to go on order "
                    f"{number}; {-change} cannot be taken from it. Nothing was written."
                )
            rows.append(_line(order.id, thing, change, line.price_minor if line else None))
        tx.add_all(rows)
        words = ", ".join(f"{change:+d} {word}" for word, change in bars.items())
        tx.say(f"Changed order {number}: {words}.")


def end_order(book: Book, number: int, *, on: date, by: str, reason: str) -> OrderRow:
    """End an order before all of it went, by name and with a reason. Raises BadInput for neither."""
    if not by.strip():
        raise BadInput("Who ended it? Add --by NAME.")
    if not reason.strip():
        raise BadInput('Why does it end? Add --reason, such as --reason "they closed".')
    with book.write("order end") as tx:
        order = open_order(tx.rows, number)
        if on < order.on:
            raise BadInput(f"Order {number} is of {show_date(order.on)}; look at --on.")
        tx.add(OrderEnd(order_id=order.id, on=on, by=by.strip(), reason=reason.strip()))
        tx.say(f"Ended order {number}.")
    return order
