"""Which lots a notice means: by number as quoted, or by supplier, material and dates."""

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.codes import looks_like_lot_code, supplier_number_key
from ledger.domain.names import near
from ledger.errors import BadInput
from ledger.views.lots import LotRow, all_lots, find_lot


@dataclass(frozen=True)
class Notice:
    """What the supplier said: numbers, or supplier, material and the days it was received between."""

    numbers: tuple[str, ...] = ()
    supplier_id: int | None = None
    material_id: int | None = None
    received_from: date | None = None
    received_to: date | None = None


def lots_meant(rows: sqlite3.Connection, notice: Notice) -> tuple[LotRow, ...]:
    """Every lot that fits the notice.

    Numbers match whatever the capitals, spaces, dashes, slashes and prefixes; supplier and material
    narrow them where they are given. Raises BadInput when a number matches nothing.
    """
    bought = [lot for lot in all_lots(rows) if lot.supplier_id is not None and _fits(lot, notice)]
    if not notice.numbers:
        if not bought:
            raise BadInput("No lot fits that supplier, material and those days; widen them.")
        return tuple(bought)
    found: dict[int, LotRow] = {}
    for number in notice.numbers:
        key = supplier_number_key(number)
        matches = [lot for lot in bought if lot.supplier_number and supplier_number_key(lot.supplier_number) == key]
        if not matches:
            matches = _own_code(rows, number)
        if not matches:
            raise BadInput(_nothing(bought, number))
        found.update({lot.id: lot for lot in matches})
    return tuple(sorted(found.values(), key=lambda lot: lot.id))


def _own_code(rows: sqlite3.Connection, number: str) -> list[LotRow]:
    """A number that is one of our own lot codes; a supplier's number may look alike and fail its check."""
    if not looks_like_lot_code(number):
        return []
    known = {row[0] for row in rows.execute("SELECT code FROM live_lot")}
    plain = number.strip().upper()
    return [find_lot(rows, plain)] if plain in known else []


def _fits(lot: LotRow, notice: Notice) -> bool:
    return (
        notice.supplier_id in (None, lot.supplier_id)
        and notice.material_id in (None, lot.material_id)
        and (notice.received_from is None or lot.on >= notice.received_from)
        and (notice.received_to is None or lot.on <= notice.received_to)
    )


def _nothing(bought: Sequence[LotRow], number: str) -> str:
    close = near(number, [lot.supplier_number for lot in bought if lot.supplier_number])
    hint = f" Near it: {', '.join(close)}." if close else ""
    unknown = [lot for lot in bought if lot.number_unknown]
    could = (
        f" {len(unknown)} lots came without a number, so it cannot be excluded that it is one of them: "
        "soapledger recall lot --supplier NAME --material NAME"
        if unknown
        else ""
    )
    return f"No lot with their number '{number}' was ever received.{hint}{could}"
