"""The stalls, and what stands at each."""

from dataclasses import dataclass
from datetime import date

from ledger.rows.bars import standing_at
from ledger.rows.lot import PlaceRow, lots_by_id, places
from ledger.rows.opened import Rows
from ledger.units.names import named


def stall_by_name(rows: Rows, text: str) -> PlaceRow:
    """The stall meant by a name or the start of one. Raises BadInput with near matches."""
    stalls = [one for one in places(rows) if one.kind == "stall"]
    return named(text, stalls, noun="stall", add=f'soapledger stall add "{text}"')


@dataclass(frozen=True)
class StallLot:
    """Bars of one batch standing at a stall."""

    lot_id: int
    code: str
    product: str
    bars: int
    status: str
    out_on: date


def at_stall(rows: Rows, place_id: int) -> tuple[StallLot, ...]:
    """What stands at a stall now, by batch."""
    found = standing_at(rows, place_id)
    lots = lots_by_id(rows, {one.lot_id for one in found})
    return tuple(
        StallLot(lot.id, lot.code, lot.material, one.bars, lot.status, one.out_on)
        for one in found
        for lot in (lots[one.lot_id],)
    )
