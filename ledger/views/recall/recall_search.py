"""Which lots a notice means: by number as quoted, or by supplier, material and dates; and which batches a bar."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.rows.batch import BatchRow, find_batch, portions_of
from ledger.rows.codes import near_words
from ledger.rows.lot import LotRow, all_lots, lots_by_id
from ledger.rows.movement import graph_from
from ledger.rows.opened import Rows
from ledger.units.codes import looks_like_batch_code, supplier_number_key
from ledger.units.dates import show_date
from ledger.units.names import near


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
    fitting = [lot for lot in all_lots(rows) if _fits(lot, notice)]
    if not notice.numbers:
        if not fitting:
            raise BadInput("No lot fits that supplier, material and those days; widen them.")
        return tuple(fitting)
    found: dict[int, LotRow] = {}
    for number in notice.numbers:
        matches = [lot for lot in fitting if _called(lot, number)]
        if not matches:
            raise BadInput(_nothing(rows, [lot for lot in fitting if lot.supplier_id is not None], number))
        if len({(lot.supplier_id, lot.material_id) for lot in matches}) > 1 and not every:
            raise BadInput(_several(matches, number))
        found.update({lot.id: lot for lot in matches})
    return tuple(sorted(found.values(), key=lambda lot: lot.id))


def batches_meant(rows: Rows, codes: Sequence[str]) -> tuple[BatchRow, ...]:
    """The batches of some bars, each once. Raises like `find_batch`, and Refused for one of which no bar was cut."""
    found = {batch.id: batch for batch in (find_batch(rows, code) for code in codes)}
    graph = graph_from(rows, [("batch", number) for number in found], "down")
    reached = {number: graph.downstream([("batch", number)]).of_kind("lot") for number in found}
    lots = lots_by_id(rows, {lot for each in reached.values() for lot in each})
    for batch in found.values():
        if not any(lots[lot].kind == "soap" for lot in reached[batch.id]):
            raise Refused(f"Batch {batch.code} ({batch.product}) is {batch.status}; {_no_bars(rows, batch)}")
    return tuple(found.values())


def _no_bars(rows: Rows, batch: BatchRow) -> str:
    if parts := portions_of(rows, batch.id):
        return f"no bars were cut of its portions {', '.join(one.code for one in parts)}, so nobody has any."
    if batch.soap:
        return "no bars were cut of it, so nobody has any."
    return "it gave no bars, and went into none."


def bars_called(rows: Rows, notice: Notice) -> tuple[tuple[str, ...], bool]:
    """The numbers of a notice that are codes of batches here, and whether all are, no lot is called so, and nothing
    narrows them: then they were read from bars."""
    codes = tuple(number for number in notice.numbers if _is_batch(rows, number))
    if not codes or notice != Notice(codes):
        return codes, False
    return codes, not any(_called(lot, code) for lot in all_lots(rows) for code in codes)


def _is_batch(rows: Rows, text: str) -> bool:
    try:
        return looks_like_batch_code(text) and find_batch(rows, text).id > 0
    except Refused:
        return False


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


def _nothing(rows: Rows, bought: Sequence[LotRow], number: str) -> str:
    close = near(number, [lot.supplier_number for lot in bought if lot.supplier_number])
    hint = f" Near it: {', '.join(close)}." if close else ""
    unknown = [f"{lot.code} {lot.material}" for lot in bought if lot.number_unknown]
    could = (
        f" These came without a number and could be it; recall one by our own code: {', '.join(unknown)}."
        if unknown
        else ""
    )
    bars = ""
    if looks_like_batch_code(number) and (words := near_words(rows, number)):
        bars = f" Was it read from a bar?{words} Then: soapledger recall bar CODE"
    return f"No lot with the number '{number}' was ever received.{hint}{could}{bars}"
