"""Which lots a notice means: by number as quoted, or by supplier, material and dates; and which batches a bar."""

from collections.abc import Sequence
from contextlib import suppress
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.rows.batch import BatchRow, find_batch, portions_of
from ledger.rows.codes import near_words
from ledger.rows.lot import LotRow, find_lot, lots_numbered, lots_of
from ledger.rows.opened import Rows
from ledger.rows.reached import NumberKept, numbers_kept
from ledger.units.codes import looks_like_batch_code, looks_like_lot_code, supplier_number_key
from ledger.units.dates import show_date
from ledger.units.names import nearest
from ledger.views.recall.reach import Starts, reach

_NAMED = 5  # so that the line stays one line


class Notice(NamedTuple):
    """What the supplier said: numbers, or supplier, material and the days it was received between."""

    numbers: tuple[str, ...] = ()
    supplier_id: int | None = None
    material_id: int | None = None
    received_from: date | None = None
    received_to: date | None = None


def lots_meant(rows: Rows, notice: Notice, *, every: bool = False) -> tuple[LotRow, ...]:
    """Every lot that fits the notice.

    Numbers match whatever the capitals, spaces, dashes, slashes and prefixes; supplier and material
    narrow them where they are given. Raises BadInput when a number matches nothing, or lots of different
    suppliers or materials, unless `every` one of them is meant.
    """
    if not notice.numbers and notice.material_id is not None:
        fitting = tuple(lot for lot in lots_of(rows, notice.material_id) if _fits(lot, notice))
        if not fitting:
            raise BadInput("No lot fits that supplier, material and those days; widen them.")
        return fitting
    found: dict[int, LotRow] = {}
    for number in notice.numbers:
        matches = [lot for lot in _called(rows, number) if _fits(lot, notice)]
        if not matches:
            raise BadInput(_nothing(rows, notice, number))
        if len({(lot.supplier_id, lot.material_id) for lot in matches}) > 1 and not every:
            raise BadInput(_several(matches, number))
        found.update({lot.id: lot for lot in matches})
    return tuple(sorted(found.values(), key=lambda lot: lot.id))


def batches_meant(rows: Rows, codes: Sequence[str]) -> tuple[BatchRow, ...]:
    """The batches of some bars, each once. Raises like `find_batch`, and Refused for one of which no bar was cut."""
    found = {batch.id: batch for batch in (find_batch(rows, code) for code in codes)}
    for batch in found.values():
        if batch.soap and batch.yield_lot_id is not None:  # its own bars
            continue
        if not any(kind == "soap" for kind, _ in reach(rows, Starts(bars_of=(batch,))).found.lots.values()):
            raise Refused(f"Batch {batch.code} ({batch.product}) is {batch.status}; {_no_bars(rows, batch)}")
    return tuple(found.values())


def _no_bars(rows: Rows, batch: BatchRow) -> str:
    if parts := portions_of(rows, batch.id):
        return f"no bars were cut of its portions {', '.join(one.code for one in parts)}, so nobody has any."
    if batch.soap:
        return "no bars were cut of it, so nobody has any."
    return "it gave no bars, and went into none."


def bars_called(rows: Rows, notice: Notice) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The numbers of a notice that are codes of batches here, and those of them that were read from bars.

    So they were where no lot is called so, and nothing narrows the notice.
    """
    codes = tuple(number for number in notice.numbers if _is_batch(rows, number))
    if not codes or notice != Notice(notice.numbers):
        return codes, ()
    return codes, tuple(code for code in codes if not _called(rows, code))


def _is_batch(rows: Rows, text: str) -> bool:
    try:
        return looks_like_batch_code(text) and find_batch(rows, text).id > 0
    except Refused:
        return False


def _called(rows: Rows, number: str) -> list[LotRow]:
    """The lots a number is for: the supplier's as quoted by anyone, or our own code; no bars, which carry a batch's."""
    found = {lot.id: lot for lot in lots_numbered(rows, number)}
    if looks_like_lot_code(number):
        with suppress(Refused, BadInput):
            own = find_lot(rows, number)
            found[own.id] = own
    return [lot for _, lot in sorted(found.items()) if lot.kind != "soap"]


def _fits(lot: LotRow | NumberKept, notice: Notice) -> bool:
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


def _nothing(rows: Rows, notice: Notice, number: str) -> str:
    bought = [lot for lot in numbers_kept(rows) if _fits(lot, notice)]
    close = nearest(number, [lot.supplier_number for lot in bought if lot.supplier_number], key=supplier_number_key)
    hint = f" Near it: {', '.join(close)}." if close else ""
    if notice.supplier_id is not None:
        known = dict.fromkeys(lot.supplier_number for lot in reversed(bought) if lot.supplier_number)
        last = [one for one in known if one not in close][:_NAMED]
        hint += f" The last from that supplier: {', '.join(last)}." if last else ""
    unknown = [f"{lot.code} {lot.material}" for lot in reversed(bought) if not lot.supplier_number]
    more = f" and {len(unknown) - _NAMED} more" if len(unknown) > _NAMED else ""
    could = (
        " These came without a number and could be it; recall one by our own code: "
        f"{', '.join(unknown[:_NAMED])}{more}."
        if unknown
        else ""
    )
    bars = ""
    if looks_like_batch_code(number) and (words := near_words(rows, number)):
        bars = f" Was it read from a bar?{words} Then: soapledger recall bar CODE"
    return f"No lot with the number '{number}' was ever received.{hint}{could}{bars}"
