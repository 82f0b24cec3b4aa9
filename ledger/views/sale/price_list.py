"""The list of prices: what was set and holds, and what a buyer pays for each product at one outlet."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.label.net_quantity import net_of
from ledger.domain.label.unit_price import Said, needed
from ledger.domain.sale.pricing import Outlet, PriceTable, SetPrice
from ledger.markets import market
from ledger.rows.lot import places
from ledger.rows.opened import Rows
from ledger.rows.people import customer_list
from ledger.rows.recipe import recipe_cards, versions_by_id
from ledger.rows.sell.product import products
from ledger.views.sale.prices import price_table


class HeldPrice(NamedTuple):
    """A price or an offer as it was set."""

    product: str | None  # None: every product
    code: str | None
    where: str | None  # None: anywhere
    bars: int
    price_minor: int | None
    since: date


def held_prices(rows: Rows, on: date) -> list[HeldPrice]:
    """Every price and offer that holds for something on a day, the products by name."""
    stalls = {one.id: one.name for one in places(rows)}
    customers = {one.id: one.name for one in customer_list(rows)}
    cards = {one.id: (one.name, one.code) for one in recipe_cards(rows)}

    def shown(one: SetPrice) -> HeldPrice:
        name, code = cards.get(one.recipe_id or 0, (None, None))
        where = stalls.get(one.outlet.place_id or 0) or customers.get(one.outlet.customer_id or 0)
        return HeldPrice(name, code, where, one.bars, one.price_minor, one.on)

    found = [shown(one) for one in price_table(rows, on).held()]
    return sorted(found, key=lambda one: (one.where or "", (one.product or "\uffff").casefold(), one.bars))


class Priced(NamedTuple):
    """What a bar of one product costs at an outlet, as a buyer reads it."""

    product: str
    net_quantity: str
    price: str
    unit_price: str  # empty where none is asked or the net weight is not known
    price_minor: int
    net_mg: int | None
    recipe_id: int


class PriceList(NamedTuple):
    """The prices of one outlet on a day."""

    where: str  # empty: anywhere
    on: date
    priced: tuple[Priced, ...]
    offers: tuple[str, ...]
    unpriced: tuple[str, ...]
    remains: tuple[str, ...]  # what the market leaves open about the price of a kilogram


def price_list(rows: Rows, on: date, *, outlet: Outlet, where: str, market_code: str, said: Said) -> PriceList:
    """What every product that has a price costs at an outlet on a day, with the offers there.

    `said` writes an amount as her country does. The net weight is that of the latest version of the recipe.
    """
    law, table = market(market_code), price_table(rows, on)
    sold = {one.code for one in products(rows)}
    cards = [one for one in recipe_cards(rows) if one.code in sold]
    versions = versions_by_id(rows, [one.version_id for one in cards])
    unit, priced, unpriced = law.unit_price(), [], []
    for card in cards:
        minor, net = table.single(card.id, outlet), net_of(versions[card.version_id])
        if minor is None:
            unpriced.append(card.name)
            continue
        by_weight = unit and unit.asked and net and needed(minor, net.mg) and unit.show(minor, net.mg, said)
        words = law.net_words(net) if net else ""
        priced.append(Priced(card.name, words, said(minor), by_weight or "", minor, net.mg if net else None, card.id))
    return PriceList(
        where, on, tuple(priced), _offers(table, priced, outlet, said), tuple(unpriced), unit.remains if unit else ()
    )


def _offers(table: PriceTable, priced: Sequence[Priced], outlet: Outlet, said: Said) -> tuple[str, ...]:
    """The offers at an outlet in words, each with the products it is for."""
    found: dict[SetPrice, list[str]] = {}
    for one in priced:
        held = table.offers(one.recipe_id, outlet)
        for offer in held[1] if held else ():
            found.setdefault(offer, []).append(one.product)
    return tuple(
        f"{', '.join(names) + ':' if len(names) < len(priced) else 'Any'} {offer.bars} for "
        f"{said(offer.price_minor or 0)}"
        for offer, names in sorted(found.items(), key=lambda pair: (pair[0].bars, pair[0].id))
    )
