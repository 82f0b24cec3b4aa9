"""Bars go to a shop on sale or return: they change their place and stay hers, and no sale is booked."""

from collections.abc import Sequence
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.lot import LotRow, PlaceRow
from ledger.rows.sell.order import order_lines, orders
from ledger.rows.sell.tax import recipes_of
from ledger.rows.sell.terms import Terms, shop_places
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date


def place_on_sale_or_return(tx: Transaction, customer_id: int, terms: Terms | None) -> int | None:
    """Where bars stand at a customer who takes them on sale or return by these terms; None for whoever buys them."""
    return shop_places(tx.rows).get(customer_id) if terms and terms.consignment else None


def consign(
    tx: Transaction,
    lots: Sequence[tuple[LotRow, int]],
    *,
    place: int,
    workshop: PlaceRow,
    on: date,
    note: str | None,
    order: int | None,
) -> None:
    """Move bars to the shop; what an order promised of them is promised no longer."""
    moved = [(lot.id, number) for lot, number in lots]
    tx.transfer(moved, source_id=workshop.id, target_id=place, on=on, note=note)
    if order is not None:
        tx.add_rows("order_line", _no_longer(tx, lots, order))


def _no_longer(tx: Transaction, lots: Sequence[tuple[LotRow, int]], order: int) -> list[dict[str, int | None]]:
    """Lines that take from a promise what went there, of the batch first; no sale tells that it did."""
    recipes = recipes_of(tx.rows, [lot.id for lot, _ in lots])
    lines = order_lines(tx.rows, order).get(order, [])
    still = {(one.recipe_id, one.batch_id): one.open for one in lines}
    rows: list[dict[str, int | None]] = []
    for lot, number in lots:
        left, recipe = number, recipes.get(lot.id)
        for batch in (lot.batch_id, None):
            part = min(left, still.get((recipe or 0, batch), 0))
            if part:
                still[recipe or 0, batch] -= part
                left -= part
                named = None if batch is None else lot.id
                rows.append({"order_id": order, "recipe_id": recipe, "lot_id": named, "bars": -part})
    return rows


def check_order(tx: Transaction, order: int, customer_id: int, lots: Sequence[tuple[LotRow, int]]) -> dict[int, int]:
    """What one bar of each lot was promised for, where a price was; more than is still to go may leave with it.

    Raises BadInput for an order that is not there, of somebody else, or bars of which nothing is to go on it; Refused
    for one that was ended.
    """
    found = orders(tx.rows, number=order)
    if not found or found[0].customer_id != customer_id:
        raise BadInput(f"There is no order {order} of theirs; see: soapledger order list")
    if found[0].ended_on:
        raise Refused(f"Order {order} was ended on {show_date(found[0].ended_on)} by {found[0].ended_by}.")
    recipes = recipes_of(tx.rows, [lot.id for lot, _ in lots])
    lines = order_lines(tx.rows, order).get(order, [])
    prices = {}
    for lot, _ in lots:
        fit = [one for one in lines if one.recipe_id == recipes.get(lot.id) and one.batch_id in (None, lot.batch_id)]
        if not any(one.open for one in fit):
            raise BadInput(
                f"Nothing of {lot.material} ({lot.code}) is still to go on order {order}; "
                f"see: soapledger order show {order}"
            )
        price = next((one.price_minor for one in fit if one.price_minor is not None), None)
        if price is not None:
            prices[lot.id] = price
    return prices
