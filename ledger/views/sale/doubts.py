"""What is asked before a sale is booked: the same once more, a price or takings that look like a slip."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from datetime import date, datetime, timedelta
from fractions import Fraction
from statistics import median
from typing import NamedTuple

from ledger.domain.sale.pricing import Outlet
from ledger.domain.stock.usual import times_off
from ledger.rows.opened import Rows
from ledger.rows.sell.sale import booked_since, brought_by_recipe, brought_lately, lines_of
from ledger.rows.sell.tax import recipes_of
from ledger.rows.sell.terms import brought_since
from ledger.units.money import half_up, show_money
from ledger.views.sale.prices import price_table

AGAIN_WITHIN = timedelta(hours=1)  # ours, no source
# A point that slipped makes ten times as much, and prices differ by less than half: five times is asked about. Ours.
TIMES_OFF = 5


def same_again(rows: Rows, outlet: Outlet, bars: Mapping[int, int], on: date, now: datetime) -> str | None:
    """A sentence where the same bars (by lot) were booked within the last hour as sold there that day; else None."""
    moment = f"{now - AGAIN_WITHIN:%Y-%m-%dT%H:%M:%SZ}"
    for number in booked_since(rows, moment, on, place_id=outlet.place_id, customer_id=outlet.customer_id):
        sold: defaultdict[int, int] = defaultdict(int)
        for line in lines_of(rows, [number])[number]:
            if line.lot_id is not None:
                sold[line.lot_id] += line.bars
        if dict(sold) == dict(bars):
            return f"Sale {number}, booked within the last hour, is the same bars there already."
    if outlet.customer_id is not None:
        for entry, brought in brought_since(rows, outlet.customer_id, moment, on).items():
            if brought == dict(bars):
                return f"Entry {entry}, written within the last hour, took the same bars there already."
    return None


class Taken(NamedTuple):
    """Bars of one lot and what they are said to bring together."""

    lot_id: int
    bars: int
    amount_minor: int


def usual_each(rows: Rows, lots: Iterable[int], outlet: Outlet, on: date) -> dict[int, int]:
    """What one bar of each lot costs there, or else brought in the middle so far, or any bar did; by the lot."""
    wanted = list(lots)
    recipes = recipes_of(rows, wanted)
    priced = price_table(rows, on)
    brought = brought_by_recipe(rows, set(recipes.values()))
    every = [] if all(brought.get(recipe) for recipe in recipes.values()) else brought_lately(rows)
    found = {}
    for lot in wanted:
        recipe = recipes.get(lot)
        single = priced.single(recipe, outlet)
        times = Counter(brought.get(recipe or 0, []) or every)  # a few prices, paid thousands of times
        known = sorted((Fraction(amount, bars), times[bars, amount]) for bars, amount in times)
        if single is not None:
            found[lot] = single
        elif known:
            found[lot] = half_up(median([each for each, often in known for _ in range(often)]))
    return found


def unlikely(rows: Rows, taken: Iterable[Taken], outlet: Outlet, on: date, currency: str) -> str | None:
    """A sentence where what bars bring together is five times what they usually do, or a fifth; else None."""
    sold = [one for one in taken if one.bars > 0]
    usual = usual_each(rows, [one.lot_id for one in sold], outlet, on)
    known = [one for one in sold if usual.get(one.lot_id)]
    if not known:
        return None
    number, amount = sum(one.bars for one in known), sum(one.amount_minor for one in known)
    expected = sum(usual[one.lot_id] * one.bars for one in known)
    if not amount or not times_off(amount, expected, expected, TIMES_OFF):
        return None
    each, before = (show_money(half_up(Fraction(one, number)), currency) for one in (amount, expected))
    return f"That is {each} a bar; they usually bring {before}."


def new_price_off(rows: Rows, recipe_id: int | None, outlet: Outlet, price_minor: int, on: date) -> int | None:
    """What one bar costs so far, where a new price is ten times that or a tenth of it; else None."""
    before = price_table(rows, on).single(recipe_id, outlet)
    return before if before and price_minor and times_off(price_minor, before, before) else None
