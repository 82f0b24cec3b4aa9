"""The prices that hold for bars of lots, at an outlet on a day."""

from collections import Counter
from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from ledger.domain.sale.pricing import Outlet, PriceTable
from ledger.rows.opened import Rows
from ledger.rows.sell.price import prices
from ledger.rows.sell.tax import recipes_of
from ledger.units.money import share_out


def price_table(rows: Rows, on: date) -> PriceTable:
    """The prices that hold on a day."""
    return PriceTable(prices(rows), on)


class LotWorth(NamedTuple):
    """What bars of one lot cost at their single price, and what offers take off of it."""

    gross_minor: int
    reduction_minor: int


def worth_of(rows: Rows, bars: Mapping[int, int], *, on: date, outlet: Outlet) -> dict[int, LotWorth]:
    """What so many bars of each lot (by its row number) cost together at an outlet on a day, with the offers that hold.

    Lots of one product bear what offers take off by their bars, exactly. A lot without a price is left out.
    """
    recipes = recipes_of(rows, bars)
    by_product: Counter[int] = Counter()
    for lot, number in bars.items():
        if lot in recipes:
            by_product[recipes[lot]] += number
    found: dict[int, LotWorth] = {}
    for recipe, worth in price_table(rows, on).worth(by_product, outlet).items():
        lots = [lot for lot in bars if recipes.get(lot) == recipe]
        numbers = [bars[lot] for lot in lots]
        off = share_out(worth.reduction_minor, numbers) if sum(numbers) else [0] * len(lots)
        for lot, number, less in zip(lots, numbers, off, strict=True):
            found[lot] = LotWorth(worth.single_minor * number, less)
    return found
