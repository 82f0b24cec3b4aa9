"""Top up a drum: several lots of one material become one, and both histories go on in it."""

from collections.abc import Sequence
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.operations.stock.receive import next_lot_code
from ledger.rows.codes import batch_codes_given
from ledger.rows.lot import LotRow, find_lot, on_hand_at, place_of_kind
from ledger.rows.material import MaterialCard, material_by_code
from ledger.rows.opened import Rows
from ledger.storage.book import Book
from ledger.storage.tables.bench import Batch
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import FirstDecision, LotFigures, Moved, NewLot
from ledger.units.codes import batch_code
from ledger.units.dates import show_best_before, show_date
from ledger.units.quantity import WHOLE_PPM
from ledger.views.material.figures import figures_of, purity_open


def next_batch_code(tx: Transaction, on: date) -> str:
    """The next batch code of a year; a number once given is never given again, undone or not."""
    return batch_code(on.year, batch_codes_given(tx.rows, on.year) + 1)


def combine(book: Book, codes: Sequence[str], *, on: date, by: str, into: str | None = None) -> LotRow:
    """Empty the lots named into a new one, as a batch that used them all; a recall goes through it.

    The new lot keeps the earliest best-before, the widest saponification range and the highest purity of what
    went in, and is accepted; `into` names the drum. Raises Refused when the lots differ in material, are not
    accepted, out of date, or hold nothing; BadInput for fewer than two.
    """
    with book.write("lot combine") as tx:
        lots = poured_together(tx.rows, codes, on)
        workshop, first = place_of_kind(tx.rows, "workshop"), lots[0]
        batch = tx.add(Batch(code=next_batch_code(tx, on), process="combine", material_id=first.material_id, on=on))
        assert batch.id is not None
        poured = [Moved(lot.id, -on_hand_at(tx.rows, lot.id, workshop.id, on=on), batch.id) for lot in lots]
        tx.move(poured, "consumed", place_id=workshop.id, on=on)
        card = material_by_code(tx.rows, first.material_code)
        low, high = _sap(lots, card)
        new = NewLot(
            next_lot_code(tx),
            first.material_id,
            -sum(one.quantity for one in poured),
            best_before=min((lot.best_before for lot in lots if lot.best_before), default=None),
            figures=LotFigures(low, high, _purity(lots, card), water_ppm=_water(lots, card)),
            decided=FirstDecision("accepted", by, "poured together"),
            note=into,
        )
        tx.open_lots([new], place_id=workshop.id, on=on, batch_id=batch.id)
        where = f" in {into}" if into else ""
        tx.say(f"Poured {', '.join(lot.code for lot in lots)} together{where} as lot {new.code} (batch {batch.code}).")
        return find_lot(tx.rows, new.code)


def poured_together(rows: Rows, codes: Sequence[str], on: date) -> tuple[LotRow, ...]:
    """The lots meant, each once, if they may be poured together on a day; raises like `combine`."""
    lots = tuple({lot.id: lot for lot in (find_lot(rows, code, on=on) for code in codes)}.values())
    if len(lots) < 2:
        raise BadInput("Name the lots that were poured together, at least two: soapledger lot combine L4-9 L7-2")
    for lot in lots:
        _check(lot, lots[0], on)
    workshop = place_of_kind(rows, "workshop")
    for lot in lots:
        if on_hand_at(rows, lot.id, workshop.id, on=on) <= 0:
            raise Refused(f"Lot {lot.code} holds nothing in the workshop; leave it out.")
    return lots


def _check(lot: LotRow, first: LotRow, on: date) -> None:
    if lot.material_id != first.material_id:
        raise Refused(
            f"Lot {lot.code} is {lot.material} and {first.code} is {first.material}; "
            "only lots of one material are poured together."
        )
    if lot.counted:
        raise Refused(f"{lot.material} is counted in pieces; there is no drum to pour together.")
    if on < lot.on:
        raise BadInput(f"Lot {lot.code} was not there before {show_date(lot.on)}; look at --on.")
    if lot.status != "accepted":
        raise Refused(f"Lot {lot.code} is {lot.status}; accept it first, or leave it out.")
    if lot.best_before and lot.best_before < on:
        raise Refused(
            f"Lot {lot.code} was best before {show_best_before(lot.best_before)}, as the whole drum would be; leave it "
            "out."
        )


def _sap(lots: Sequence[LotRow], card: MaterialCard) -> tuple[int | None, int | None]:
    """The range that holds for every lot: its certificate's, else its material's; none where no lot has its own."""
    if all(lot.sap_low_mg_per_kg is None for lot in lots):
        return None, None
    figures = [figures_of(card, lot) for lot in lots]
    if any(one.sap_low_mg_per_kg is None for one in figures):
        return None, None  # an infused oil of which one lot was never certified
    fats = [one.fat(0) for one in figures]
    return min(fat.sap_low_mg_per_kg for fat in fats), max(fat.sap_high_mg_per_kg for fat in fats)


def _purity(lots: Sequence[LotRow], card: MaterialCard) -> int | None:
    """The purest alkali or the weakest acid of them, which errs towards more superfat.

    None where no lot has a figure of its own.
    """
    if all(lot.purity_ppm is None for lot in lots):
        return None
    room = purity_open(card.purity_ppm, card.alkali_kind)
    if card.acid_koh_mg_per_kg is not None:
        return min(lot.purity_ppm or (card.purity_ppm or WHOLE_PPM) - room for lot in lots)
    # a material without a purity is reckoned as pure
    return max(lot.purity_high_ppm or lot.purity_ppm or (card.purity_ppm or WHOLE_PPM) + room for lot in lots)


def _water(lots: Sequence[LotRow], card: MaterialCard) -> int | None:
    """Of several stock lyes, the least water, as it goes with the strongest; None where no lot has its own figure."""
    if card.water_ppm is None or all(lot.water_ppm is None for lot in lots):
        return None
    return min(card.water_ppm if lot.water_ppm is None else lot.water_ppm for lot in lots)
