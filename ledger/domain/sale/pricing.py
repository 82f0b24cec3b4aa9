"""Which price holds for a product at an outlet on a day, and what so many bars cost there with offers."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from ledger.units.money import share_out


class Outlet(NamedTuple):
    """Where bars are sold, by row numbers: at a stall, to a customer, or anywhere."""

    place_id: int | None = None
    customer_id: int | None = None


ANYWHERE = Outlet()


class SetPrice(NamedTuple):
    """A price from a day on, as somebody set it: of one bar, or of so many together (an offer); None ends it."""

    id: int
    recipe_id: int | None  # None: of every product
    outlet: Outlet  # ANYWHERE: at every outlet
    on: date
    bars: int
    price_minor: int | None


class Scope(NamedTuple):
    """What a price is for: a product or all, at an outlet or anywhere."""

    recipe_id: int | None
    outlet: Outlet


class Worth(NamedTuple):
    """What bars cost at their single price, and with the offers that hold."""

    bars: int
    single_minor: int
    gross_minor: int
    net_minor: int

    @property
    def reduction_minor(self) -> int:
        """What the offers take off."""
        return self.gross_minor - self.net_minor


def scopes(recipe_id: int | None, outlet: Outlet) -> list[Scope]:
    """Where the price of a product at an outlet is looked for, the most specific first.

    What was set for an outlet goes before what holds anywhere, since it was set for it alone; there as here the product
    goes before all of them (ours, no source).
    """
    found = [Scope(one, at) for at in (outlet, ANYWHERE) for one in (recipe_id, None)]
    return list(dict.fromkeys(found))


class PriceTable:
    """The prices that hold on a day."""

    def __init__(self, prices: Iterable[SetPrice], on: date) -> None:
        """Of each kind (product, outlet, number of bars) the one that was set last from the latest day up to `on`."""
        latest: dict[tuple[Scope, int], SetPrice] = {}
        for one in sorted(prices, key=lambda price: (price.on, price.id)):
            if one.on <= on:
                latest[Scope(one.recipe_id, one.outlet), one.bars] = one
        self._single: dict[Scope, SetPrice] = {}
        self._offers: defaultdict[Scope, list[SetPrice]] = defaultdict(list)
        for (scope, bars), one in latest.items():
            if one.price_minor is None:
                continue
            if bars == 1:
                self._single[scope] = one
            else:
                self._offers[scope].append(one)

    def held(self) -> list[SetPrice]:
        """Every price and offer that holds for something, by what it is for."""
        every = [*self._single.values(), *(one for offers in self._offers.values() for one in offers)]
        return sorted(every, key=lambda one: (one.outlet != ANYWHERE, one.recipe_id is None, one.id))

    def single(self, recipe_id: int | None, outlet: Outlet = ANYWHERE) -> int | None:
        """What one bar of a product costs at an outlet, in minor units; None where no price holds."""
        found = self._priced(recipe_id, outlet)
        return found and found.price_minor

    def _priced(self, recipe_id: int | None, outlet: Outlet) -> SetPrice | None:
        return next((self._single[one] for one in scopes(recipe_id, outlet) if one in self._single), None)

    def offers(self, recipe_id: int | None, outlet: Outlet = ANYWHERE) -> tuple[Scope, list[SetPrice]] | None:
        """The offers that hold for a product at an outlet, with what they are for; None where none does.

        Where the outlet has a price of its own for it, only offers of its own.
        """
        priced = self._priced(recipe_id, outlet)
        at = (outlet,) if priced and priced.outlet != ANYWHERE else (outlet, ANYWHERE)
        held = (one for one in scopes(recipe_id, outlet) if one.outlet in at and one in self._offers)
        return next(((one, self._offers[one]) for one in held), None)

    def worth(self, bars: Mapping[int, int], outlet: Outlet = ANYWHERE) -> dict[int, Worth]:
        """What so many bars of each product (by its row number) cost together at an outlet.

        Products under one offer for all are mixed in it, and as many bars go under offers as make it cheapest. Which
        bars those were nobody notes, so each bears its share of what the offers take off, by its price; the shares add
        up to it exactly. A product without a price is left out.
        """
        prices = {recipe: price for recipe in bars if (price := self.single(recipe, outlet)) is not None}
        together: defaultdict[Scope | int, list[int]] = defaultdict(list)
        for recipe in prices:
            held = self.offers(recipe, outlet)
            together[held[0] if held else recipe].append(recipe)
        found: dict[int, Worth] = {}
        for scope, recipes in together.items():
            gross = [prices[recipe] * bars[recipe] for recipe in recipes]
            total = sum(gross)
            if isinstance(scope, Scope):
                each = [prices[recipe] for recipe in recipes for _ in range(bars[recipe])]
                total = cheapest(each, [(one.bars, one.price_minor or 0) for one in self._offers[scope]])
            net = share_out(total, gross) if sum(gross) else gross
            for recipe, whole, left in zip(recipes, gross, net, strict=True):
                found[recipe] = Worth(bars[recipe], prices[recipe], whole, left)
        return {recipe: found[recipe] for recipe in bars if recipe in found}


def cheapest(prices: Sequence[int], offers: Sequence[tuple[int, int]]) -> int:
    """The least that bars of these prices cost where (bars, price) offers may be used any number of times.

    The dearest bars go under the offers. What an offer would make dearer is sold singly.
    """
    dearest = sorted(prices, reverse=True)
    under: list[int | None] = [0]  # the least that exactly so many bars cost under offers alone
    for many in range(1, len(dearest) + 1):
        ways = [
            before + price
            for bars, price in offers
            if bars <= many
            for before in (under[many - bars],)
            if before is not None
        ]
        under.append(min(ways, default=None))
    left = sum(dearest)
    found = left
    for many, price in enumerate(dearest, start=1):
        left -= price
        so_far = under[many]
        if so_far is not None:
            found = min(found, so_far + left)
    return found


def no_cheaper(bars: int, price_minor: int, singles: Iterable[int]) -> bool:
    """Whether an offer of so many bars is cheaper for none of these single prices."""
    return all(price_minor >= bars * single for single in singles)
