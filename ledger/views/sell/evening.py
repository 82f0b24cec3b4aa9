"""What stood at a stall, and what became of it by what is told."""

from collections.abc import Mapping, Sequence

from ledger.domain.sell.evening import Fate, Outcome, Stood, Told, evening
from ledger.errors import BadInput, Refused
from ledger.rows.lot import PlaceRow, lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.sell.assumed import brought, open_pairs
from ledger.rows.sell.product import Product
from ledger.views.sell.ready import lot_or_product
from ledger.views.stock.stall import at_stall


def stood_at(rows: Rows, place: PlaceRow) -> list[Stood]:
    """What stands at a stall, the oldest batch first. Raises Refused where nothing does."""
    here = at_stall(rows, place.id)
    if not here:
        raise Refused(f"Nothing stands at {place.name}; bars go out with: soapledger stall out {place.code} CODE=N")
    lots = lots_by_id(rows, {one.lot_id for one in here})
    aged = sorted(here, key=lambda one: (lots[one.lot_id].on, one.lot_id))
    return [Stood(one.lot_id, one.code, lots[one.lot_id].material_id, one.product, one.bars) for one in aged]


def evening_at(
    rows: Rows, place: PlaceRow, typed: Mapping[Fate, Mapping[str, int]]
) -> tuple[list[Stood], list[Outcome]]:
    """What stood at a stall and what became of it, by what was typed of batches and products.

    Raises as `evening` does, and BadInput for what did not go there.
    """
    stood, told, pairs = told_at(rows, place, typed)
    return stood, evening(stood, told, pairs)


def told_at(
    rows: Rows, place: PlaceRow, typed: Mapping[Fate, Mapping[str, int]]
) -> tuple[list[Stood], list[Told], set[tuple[int, int]]]:
    """What stands at a stall, what was typed of it, and which batches were taken for one another when it went out.

    Raises BadInput for what did not go there.
    """
    stood = stood_at(rows, place)
    pairs = open_pairs(rows, [one for came in brought(rows, place.id).values() for one in came])
    return stood, _told(rows, place, stood, typed, pairs), pairs


def _told(
    rows: Rows,
    place: PlaceRow,
    stood: Sequence[Stood],
    typed: Mapping[Fate, Mapping[str, int]],
    pairs: set[tuple[int, int]],
) -> list[Told]:
    """What was typed, by batch or by product.

    Bars that came back of a batch that was not booked out, but may have been taken for one that was, are counted for
    their product: as many of the one that was booked never left.
    """
    lots, products = {one.lot_id for one in stood}, {one.product_id for one in stood}
    assumed = {lot: booked for booked, lot in pairs if booked in lots}
    found, loose = [], set()
    for fate, numbers in typed.items():
        for text, number in numbers.items():
            meant = lot_or_product(rows, text)
            if isinstance(meant, Product):
                if meant.material_id not in products:
                    raise BadInput(f"No bars of {meant.name} went to {place.name}; there are {_standing(stood)}.")
                found.append(Told(fate, number, product_id=meant.material_id))
            elif meant.id in lots:
                found.append(Told(fate, number, lot_id=meant.id))
            elif meant.id in assumed:
                loose.add(meant.material_id)
                found.append(Told(fate, number, product_id=meant.material_id))
            else:
                raise BadInput(f"No bars of batch {meant.code} went to {place.name}; there are {_standing(stood)}.")
    return [_loosened(one, stood, loose) for one in found]


def _loosened(told: Told, stood: Sequence[Stood], loose: set[int]) -> Told:
    product = next((one.product_id for one in stood if one.lot_id == told.lot_id), None)
    return told._replace(lot_id=None, product_id=product) if product in loose and told.fate == "home" else told


def _standing(stood: Sequence[Stood]) -> str:
    return ", ".join(one.code for one in stood)
