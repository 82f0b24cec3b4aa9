"""What is ready to be taken to a stall: released bars in the workshop, by product, the oldest batch first."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.lot import LotRow, find_lot, held_at, lots_by_id, place_of_kind
from ledger.rows.opened import Rows
from ledger.rows.sell.product import Product, pick_product, products
from ledger.rows.sell.ready import in_workshop
from ledger.units.codes import looks_like_batch_code, looks_like_lot_code


class Ready(NamedTuple):
    """Released bars of one batch in the workshop."""

    lot_id: int
    code: str
    made_on: date
    best_before: date | None
    bars: int


def ready(rows: Rows, on: date) -> dict[int, list[Ready]]:
    """By product (its material), what stands released in the workshop on a day and now, the oldest batch first."""
    workshop = place_of_kind(rows, "workshop").id
    now = in_workshop(rows)
    lots = lots_by_id(rows, now, on=on)
    then = held_at(rows, now, workshop, on=on)
    found: dict[int, list[Ready]] = {}
    for lot in sorted(lots.values(), key=lambda one: (one.on, one.id)):
        bars = min(now[lot.id], then[lot.id])
        if lot.status == "released" and bars > 0:
            one = Ready(lot.id, lot.code, lot.on, lot.best_before, bars)
            found.setdefault(lot.material_id, []).append(one)
    return found


def lot_or_product(rows: Rows, text: str, known: Sequence[Product] | None = None) -> LotRow | Product:
    """What is meant by a batch code or by a product. Raises BadInput or Refused as those look-ups do."""
    if looks_like_batch_code(text) or looks_like_lot_code(text):
        return find_lot(rows, text)
    try:
        return pick_product(list(known if known is not None else products(rows)), text)
    except BadInput as error:
        if any(sign.isdigit() for sign in text):
            raise BadInput(f"'{text}' is neither a batch code nor a product; see: soapledger batch list") from error
        raise
