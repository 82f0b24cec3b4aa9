"""Top up a drum: several lots of one material become one, and both histories go on in it."""

from collections.abc import Sequence
from datetime import date

from ledger.domain.codes import batch_code
from ledger.errors import BadInput, Refused
from ledger.operations.receive import next_lot_code
from ledger.storage.book import Book, Transaction
from ledger.storage.tables import Batch, Decision, Lot, Movement
from ledger.views.lots import LotRow, find_lot, on_hand_at, place_of_kind


def next_batch_code(tx: Transaction, on: date) -> str:
    """The next batch code of a year; a number once given is never given again, undone or not."""
    year = f"{on.year % 100:02d}-%"
    number = tx.rows.execute("SELECT count(*) FROM batch WHERE code LIKE ?", (year,)).fetchone()[0] + 1
    return batch_code(on.year, number)


def combine(book: Book, codes: Sequence[str], *, on: date, by: str) -> LotRow:
    """Empty the lots named into a new one, as a batch that used them all; a recall goes through it.

    The new lot keeps the earliest best-before and the widest saponification range, and is accepted.
    Raises Refused when the lots differ in material, are not accepted, or hold nothing; BadInput for
    fewer than two.
    """
    if len(set(codes)) < 2:
        raise BadInput("Name the lots that were poured together, at least two: soapledger lot combine L4-9 L7-2")
    with book.write("lot combine") as tx:
        lots = [find_lot(tx.rows, code, on=on) for code in codes]
        workshop = place_of_kind(tx.rows, "workshop")
        first = lots[0]
        if any(lot.material_id != first.material_id for lot in lots):
            raise Refused("Only lots of one material are poured together; these are of different ones.")
        if first.counted:
            raise Refused(f"{first.material} is counted in pieces; there is no drum to pour together.")
        if waiting := [lot for lot in lots if lot.status != "accepted"]:
            raise Refused(f"Lot {waiting[0].code} is {waiting[0].status}; accept it first, or leave it out.")
        batch = tx.add(Batch(code=next_batch_code(tx, on), process="combine", material_id=first.material_id, on=on))
        assert batch.id is not None
        total = 0
        for lot in lots:
            held = on_hand_at(tx.rows, lot.id, workshop.id, on=on)
            if held <= 0:
                raise Refused(f"Lot {lot.code} holds nothing in the workshop; leave it out.")
            total += held
            tx.add(
                Movement(
                    lot_id=lot.id,
                    place_id=workshop.id,
                    on=on,
                    quantity=-held,
                    kind="consumed",
                    batch_id=batch.id,
                )
            )
        dates = [lot.best_before for lot in lots if lot.best_before]
        lows = [lot.sap_low_mg_per_kg for lot in lots]
        highs = [lot.sap_high_mg_per_kg for lot in lots]
        certified = all(low is not None for low in lows)
        purities = [lot.purity_ppm for lot in lots if lot.purity_ppm is not None]
        new = tx.add(
            Lot(
                code=next_lot_code(tx),
                material_id=first.material_id,
                on=on,
                batch_id=batch.id,
                best_before=min(dates, default=None),
                sap_low_mg_per_kg=min((v for v in lows if v is not None), default=None) if certified else None,
                sap_high_mg_per_kg=max((v for v in highs if v is not None), default=None) if certified else None,
                # the purest of them: reckoning too pure errs towards more superfat
                purity_ppm=max(purities) if len(purities) == len(lots) else None,
            )
        )
        assert new.id is not None
        tx.add(
            Movement(
                lot_id=new.id,
                place_id=workshop.id,
                on=on,
                quantity=total,
                kind="yielded",
                batch_id=batch.id,
            )
        )
        tx.add(Decision(lot_id=new.id, verdict="accepted", on=on, by=by, reason="poured together"))
        tx.say(f"Poured {', '.join(lot.code for lot in lots)} together as lot {new.code} (batch {batch.code}).")
        return find_lot(tx.rows, new.code)
