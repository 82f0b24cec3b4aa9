"""A day at a stall ends: what came back, what was lost, what was sold, and what was taken for it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.sell.evening import COUNTED, Outcome
from ledger.domain.sell.takings import Takings, all_told, check_takings
from ledger.errors import BadInput
from ledger.operations.sale.booked import Charged
from ledger.operations.sell.assuming import write_assumed
from ledger.operations.sell.stall_money import Money, Sold, book_day
from ledger.rows.lot import PlaceRow, place_of_kind
from ledger.rows.sell.sale import lines_of
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.views.sale.words import BarsMoved, in_full
from ledger.views.sell.evening import evening_at
from ledger.views.stock.stall import at_stall, stall_by_name


@dataclass(frozen=True)
class StallDay:
    """How a day at a stall ended: by batch, how many were sold and how many came home."""

    stall: str
    sold: tuple[tuple[str, int], ...]
    back: int
    held: tuple[str, ...]  # batches on hold of which bars were sold all the same
    lost: int = 0  # stolen or broken
    assumed: tuple[str, ...] = ()  # batches whose bars sold or lost may as well be of another
    money: Money | None = None  # None: nothing was sold, nothing taken
    told: str = ""  # what moved, in full


def stall_back(
    book: Book,
    stall: str,
    back: Mapping[str, int],
    *,
    on: date,
    takings_minor: int | None = None,
    stolen: Mapping[str, int] | None = None,
    broken: Mapping[str, int] | None = None,
    takings: Takings | None = None,
    pitch_minor: int | None = None,
) -> StallDay:
    """Close a day at a stall: so many of each batch or product came back, were stolen or broken; the rest was sold.

    Bars sold bring their price with the offers of the day; without prices the takings are shared by bars, exactly.
    Raises Refused for more back than went, BadInput for a batch that is not there, one left out, or takings without a
    sale.
    """
    money = takings or Takings(whole_minor=takings_minor)
    check_takings(money)
    with book.write("stall back") as tx:
        place = stall_by_name(tx.rows, stall)
        here = at_stall(tx.rows, place.id)
        stood, ended = evening_at(tx.rows, place, {"home": back, "stolen": stolen or {}, "broken": broken or {}})
        out_on = {one.lot_id: one.out_on for one in here}
        for one in stood:
            if on < out_on[one.lot_id]:
                day = out_on[one.lot_id].isoformat()
                raise BadInput(f"The bars of batch {one.code} went out on {day}; look at --on.")
        if money.taken_minor and not money.other_minor and not any(one.sold for one in ended):
            raise BadInput("Nothing was sold, so there are no takings to share; look at the numbers that came back.")
        sold = _move(tx, place, ended, on)
        charged = [] if pitch_minor is None else [Charged("pitch", pitch_minor)]
        booked = book_day(tx, place, sold, money, on=on, charged=charged, complete=all_told(money, set()))
        home = sum(one.home for one in ended)
        lost = sum(one.stolen + one.broken for one in ended)
        told = _in_full(tx, booked, ended)
        tx.say(f"{f'Sale {booked.sale}: back' if booked else 'Back'} from {place.name}, {told}.")
        code = {one.lot_id: one.code for one in stood}
        on_hold = {one.lot_id for one in here if one.status == "on hold"}
    return StallDay(
        place.name,
        tuple((code[one.lot_id], one.sold) for one in ended),
        home,
        tuple(code[one.lot_id] for one in ended if one.sold and one.lot_id in on_hold),
        lost,
        tuple(code[one.lot_id] for one in ended if one.may_be and one.sold + one.stolen + one.broken),
        booked,
        told,
    )


def _in_full(tx: Transaction, booked: Money | None, ended: Sequence[Outcome]) -> str:
    """What was sold with what it brought, what came home, and what was lost, batch by batch."""
    currency = settings(tx.rows).currency
    lines = lines_of(tx.rows, [booked.sale])[booked.sale] if booked else []
    sold = [BarsMoved(one.lot_id, one.bars, one.amount_minor) for one in lines if one.lot_id is not None and one.bars]
    home = [BarsMoved(one.lot_id, one.home) for one in ended if one.home]
    lost = [BarsMoved(one.lot_id, one.stolen + one.broken) for one in ended if one.stolen + one.broken]
    parts = (("sold: ", sold), ("came home: ", home), ("stolen or broken: ", lost))
    return "; ".join(words + in_full(tx.rows, moved, currency) for words, moved in parts if moved) or "nothing moved"


def _move(tx: Transaction, place: PlaceRow, ended: Sequence[Outcome], on: date) -> list[Sold]:
    """Book where each bar went, and which batches it may be of."""
    workshop = place_of_kind(tx.rows, "workshop")
    home = [(one.lot_id, one.home) for one in ended if one.home]
    tx.transfer(home, source_id=place.id, target_id=workshop.id, on=on)
    lost = [
        (one, bars, words) for one in ended for bars, words in ((one.stolen, "stolen"), (one.broken, "broken")) if bars
    ]
    wasted = tx.move(
        [Moved(one.lot_id, -bars, note=_note(one, f"{words} at {place.name}")) for one, bars, words in lost],
        "wasted",
        place_id=place.id,
        on=on,
    )
    went = [one for one in ended if one.sold]
    sold = tx.move([Moved(one.lot_id, -one.sold, note=_note(one)) for one in went], "sold", place_id=place.id, on=on)
    write_assumed(tx, [(number, one.may_be) for number, (one, _, _) in zip(wasted, lost, strict=True)])
    write_assumed(tx, [(number, one.may_be) for number, one in zip(sold, went, strict=True)])
    return [Sold(one.lot_id, one.sold, number) for one, number in zip(went, sold, strict=True)]


def _note(one: Outcome, words: str = "") -> str | None:
    return "; ".join(part for part in (words, COUNTED if one.counted else "") if part) or None
