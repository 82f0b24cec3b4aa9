"""Which lots a notice means: by number as quoted, or by supplier, material and dates."""

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.codes import supplier_number_key
from ledger.domain.dates import show_date
from ledger.domain.names import near
from ledger.errors import BadInput
from ledger.views.lots import LotRow, all_lots


@dataclass(frozen=True)
class Notice:
    """What the supplier said: numbers, or supplier, material and the days it was received between."""

    numbers: tuple[str, ...] = ()
    supplier_id: int | None = None
    material_id: int | None = None
    received_from: date | None = None
    received_to: date | None = None


def lots_meant(rows: sqlite3.Connection, notice: Notice, *, every: bool = False) -> tuple[LotRow, ...]:
    """Every lot that fits the notice.

    Numbers match whatever the capitals, spaces, dashes, slashes and prefixes; supplier and material
    narrow them where they are given. Raises BadInput when a number matches nothing, or lots of different
    suppliers or materials, unless `every` one of them is meant.
    """
    fitting = [lot for lot in all_lots(rows) if _fits(lot, notice)]
    if not notice.numbers:
        if not fitting:
            raise BadInput("No lot fits that supplier, material and those days; widen them.")
        return tuple(fitting)
    found: dict[int, LotRow] = {}
    for number in notice.numbers:
        matches = [lot for lot in fitting if _called(lot, number)]
        if not matches:
            raise BadInput(_nothing([lot for lot in fitting if lot.supplier_id is not None], number))
        if len({(lot.supplier_id, lot.material_id) for lot in matches}) > 1 and not every:
            raise BadInput(_several(matches, number))
        found.update({lot.id: lot for lot in matches})
    return tuple(sorted(found.values(), key=lambda lot: lot.id))


def _called(lot: LotRow, number: str) -> bool:
    """Whether a number is this lot's: the supplier's for it as quoted by anyone, or our own code for it."""
    if lot.supplier_number and supplier_number_key(lot.supplier_number) == supplier_number_key(number):
        return True
    # bars carry the batch's code and are no lot that a notice names
    return lot.kind != "soap" and supplier_number_key(lot.code) == supplier_number_key(number)


def _fits(lot: LotRow, notice: Notice) -> bool:
    return (
        notice.supplier_id in (None, lot.supplier_id)
        and notice.material_id in (None, lot.material_id)
        and (notice.received_from is None or lot.on >= notice.received_from)
        and (notice.received_to is None or lot.on <= notice.received_to)
    )


def _several(matches: Sequence[LotRow], number: str) -> str:
    listed = "; ".join(
        f"{lot.code} {lot.material} from {lot.supplier or f'batch {lot.batch_code}'}, {show_date(lot.on)}"
        for lot in matches
    )
    return (
        f"Several lots have the number '{number}': {listed}. Name the one meant by our own code "
        f"({matches[0].code}), narrow with --supplier or --material, or take --all."
    )


def _nothing(bought: Sequence[LotRow], number: str) -> str:
    close = near(number, [lot.supplier_number for lot in bought if lot.supplier_number])
    hint = f" Near it: {', '.join(close)}." if close else ""
    unknown = [f"{lot.code} {lot.material}" for lot in bought if lot.number_unknown]
    could = (
        f" These came without a number and could be it; recall one by our own code: {', '.join(unknown)}."
        if unknown
        else ""
    )
    return f"No lot with the number '{number}' was ever received.{hint}{could}"
