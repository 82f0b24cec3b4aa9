"""A price or an offer is set from a day on, or ended."""

from datetime import date
from typing import NamedTuple

from ledger.domain.sale.pricing import Outlet, PriceTable, no_cheaper
from ledger.errors import BadInput, Refused
from ledger.rows.sell.price import prices
from ledger.rows.sell.product import products
from ledger.storage.book import Book
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.money import show_money


class PriceFor(NamedTuple):
    """What a price is for, by row numbers, with the same in words."""

    recipe_id: int | None  # None: every product
    outlet: Outlet
    words: str  # Rosemary Bar at Saturday market


def set_price(book: Book, what: PriceFor, price_minor: int, *, on: date, bars: int = 1, currency: str) -> list[str]:
    """Set the price of one bar, or of so many together, from a day on.

    Returns, in words, the offers that are no cheaper any more. Raises Refused for an offer that is no cheaper than the
    bars singly, or of bars that have no price.
    """
    with book.write("price set") as tx:
        if bars > 1:
            _check_offer(tx, what, bars, price_minor, on, currency)
        _write(tx, what, bars, price_minor, on)
        said = show_money(price_minor, currency)
        each = said if bars == 1 else f"{bars} for {said}"
        tx.say(f"From {show_date(on)}: {what.words}, {each}.")
        dear = _dear_offers(tx, on, currency) if bars == 1 else []
    return dear


def end_price(book: Book, what: PriceFor, *, on: date, bars: int = 1) -> None:
    """End the price of one bar, or an offer of so many, from a day on. Raises BadInput where none was set for that."""
    with book.write("price end") as tx:
        held = PriceTable(prices(tx.rows), on).held()
        if not any((one.recipe_id, one.outlet, one.bars) == (what.recipe_id, what.outlet, bars) for one in held):
            thing = "price" if bars == 1 else f"offer of {bars} bars"
            raise BadInput(
                f"No {thing} is set for just that ({what.words}) on {show_date(on)}; see: soapledger price list"
            )
        _write(tx, what, bars, None, on)
        tx.say(f"From {show_date(on)} no {'price' if bars == 1 else f'offer of {bars}'}: {what.words}.")


def _write(tx: Transaction, what: PriceFor, bars: int, price_minor: int | None, on: date) -> None:
    row = {"recipe_id": what.recipe_id, **what.outlet._asdict(), "on": on, "bars": bars, "price_minor": price_minor}
    tx.add_rows("price", [row])


def _singles(tx: Transaction, table: PriceTable, recipe_id: int | None, outlet: Outlet) -> list[int]:
    recipes = {one.recipe_id for one in products(tx.rows)} if recipe_id is None else {recipe_id}
    return [price for one in recipes if (price := table.single(one, outlet)) is not None]


def _check_offer(tx: Transaction, what: PriceFor, bars: int, price_minor: int, on: date, currency: str) -> None:
    singles = _singles(tx, PriceTable(prices(tx.rows), on), what.recipe_id, what.outlet)
    if not singles:
        raise Refused(
            f"One bar has no price yet on {show_date(on)} ({what.words}), so nobody knows what an offer takes off; "
            "set it first: soapledger price set PRODUCT PRICE"
        )
    if no_cheaper(bars, price_minor, singles):
        raise Refused(
            f"{bars} for {show_money(price_minor, currency)} is no cheaper than {bars} bars singly, which cost "
            f"{show_money(bars * max(singles), currency)}; look at the offer."
        )


def _dear_offers(tx: Transaction, on: date, currency: str) -> list[str]:
    table = PriceTable(prices(tx.rows), on)
    return [
        f"{one.bars} for {show_money(one.price_minor, currency)}"
        for one in table.held()
        if one.bars > 1
        and one.price_minor is not None
        and no_cheaper(one.bars, one.price_minor, _singles(tx, table, one.recipe_id, one.outlet))
    ]
