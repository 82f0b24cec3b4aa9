"""What stands at shops on sale or return: hers until the shop's count."""

from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.rows.lot import find_lot, lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.people import CustomerCard, contacts, customer_by_code
from ledger.rows.recipe import recipe_by_code
from ledger.rows.sell.tax import recipes_of
from ledger.rows.sell.terms import shop_places, standing_at_shops
from ledger.units.codes import looks_like_batch_code


class AtShop(NamedTuple):
    """Bars of one batch that are hers at a shop."""

    customer: str
    product: str
    batch: str
    bars: int
    brought_on: date  # the last day some were brought there
    best_before: date | None
    status: str
    customer_id: int
    lot_id: int
    recipe_id: int | None


def at_shops(rows: Rows, customer_id: int | None = None) -> tuple[AtShop, ...]:
    """What stands at one shop or at all, by the shop's name, the oldest batch first."""
    found = standing_at_shops(rows, customer_id)
    numbers = {one.lot_id for one in found}
    lots, recipes = lots_by_id(rows, numbers), recipes_of(rows, numbers)
    names = {number: one.name for number, one in contacts(rows, sorted({one.customer_id for one in found})).items()}
    lines = [
        AtShop(
            names[one.customer_id],
            lot.material,
            lot.code,
            one.bars,
            one.out_on,
            lot.best_before,
            lot.status,
            one.customer_id,
            one.lot_id,
            recipes.get(one.lot_id),
        )
        for one in found
        for lot in (lots[one.lot_id],)
    ]
    return tuple(sorted(lines, key=lambda one: one.customer.casefold()))


def shop_meant(rows: Rows, text: str) -> tuple[CustomerCard, int]:
    """The customer who has bars on sale or return, and the place where they stand.

    Raises BadInput for nobody known, Refused for one who has not.
    """
    card = customer_by_code(rows, text)
    place = shop_places(rows).get(card.id)
    if place is None:
        raise Refused(
            f"{card.name} takes nothing on sale or return. When that is agreed: "
            f"soapledger customer terms {card.code} --sale-or-return"
        )
    return card, place


class Group(NamedTuple):
    """What one word of a count means: a product with all its batches there, or one batch."""

    word: str
    name: str
    lots: tuple[AtShop, ...]
    exact: bool  # the code on the bars was read

    @property
    def bars(self) -> int:
        """How many stand there."""
        return sum(one.bars for one in self.lots)


def group_meant(rows: Rows, text: str, standing: tuple[AtShop, ...], shop: str, unsure: Collection[int] = ()) -> Group:
    """What is meant of what stands there by a batch code, a product's name or the start of one.

    Raises BadInput for what does not stand there, Refused for a batch among those (`unsure`) that an earlier count
    assumed to be gone.
    """
    lot = find_lot(rows, text) if looks_like_batch_code(text) else None
    if lot is not None:
        lots = tuple(one for one in standing if one.lot_id == lot.id)
        name = f"batch {lot.code}"
    else:
        recipe = recipe_by_code(rows, text)
        lots = tuple(one for one in standing if one.recipe_id == recipe.id)
        name = recipe.name
    if not lots and lot is not None and lot.id in unsure:
        others = dict.fromkeys(one.batch for one in standing if one.recipe_id and one.lot_id in unsure)
        instead = f"; where it is invoiced already, book them as {' or '.join(others)}" if others else ""
        raise Refused(
            f"By an earlier count at {shop}, bars of batch {lot.code} were taken to be gone, the oldest first. "
            f"Take that count back with soapledger undo, and count by batch{instead}."
        )
    if not lots:
        there = ", ".join(dict.fromkeys(one.product for one in standing)) or "nothing"
        raise BadInput(f"No bars of {name} stand at {shop}; there stands {there}.")
    return Group(text, name, lots, exact=lot is not None)
