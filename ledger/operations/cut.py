"""What a batch gives: bars and offcuts at the cut, an infused oil at the straining."""

from datetime import date

from ledger.domain.dates import show_date
from ledger.domain.quantity import show_mass
from ledger.errors import BadInput, Refused
from ledger.operations.receive import next_lot_code
from ledger.operations.setup import OFFCUTS
from ledger.storage.book import Book
from ledger.storage.tables import Decision, Lot, Movement
from ledger.views.batch import BatchRow, find_batch
from ledger.views.lots import place_of_kind
from ledger.views.material import material_by_code
from ledger.views.reading import Rows
from ledger.views.record import mass_in
from ledger.views.settings import settings


def cut_batch(
    book: Book, code: str, *, bars: int, on: date, by: str, bars_mg: int | None = None, offcuts_mg: int = 0
) -> int:
    """Book the bars cut (they carry the batch's code) and the offcuts; returns the mass in, in mg.

    Raises Refused before everything is weighed and poured, after an earlier cut, or for more mass out
    than went in; BadInput for no bars or a day before the batch was made.
    """
    if bars <= 0:
        raise BadInput("How many bars were cut? Write a number above zero, such as 10.")
    with book.write("batch cut") as tx:
        batch = find_batch(tx.rows, code)
        _ready_to_yield(tx.rows, batch, on)
        if not batch.soap:
            raise Refused(f"Batch {batch.code} is an infusion; strain it: soapledger batch strain {batch.code} WEIGHT")
        if not batch.poured and batch.process != "rebatch":
            raise Refused(
                f"Batch {batch.code} is not booked as poured yet: "
                f"soapledger batch log {batch.code} --reading poured=14:05"
            )
        put_in = mass_in(tx.rows, batch.id)
        out = (bars_mg or 0) + offcuts_mg
        if out > put_in:
            units = settings(tx.rows).units
            raise Refused(
                f"{show_mass(out, units)} came out and only {show_mass(put_in, units)} went in; look at the "
                "weights again. Nothing was written."
            )
        workshop = place_of_kind(tx.rows, "workshop")
        lot = tx.add(Lot(code=batch.code, material_id=batch.material_id, on=on, batch_id=batch.id, mass_mg=bars_mg))
        assert lot.id is not None
        tx.add(Movement(lot_id=lot.id, place_id=workshop.id, on=on, quantity=bars, kind="yielded", batch_id=batch.id))
        if offcuts_mg:
            rest = tx.add(
                Lot(
                    code=next_lot_code(tx),
                    material_id=material_by_code(tx.rows, OFFCUTS).id,
                    on=on,
                    batch_id=batch.id,
                )
            )
            assert rest.id is not None
            tx.add(
                Movement(
                    lot_id=rest.id,
                    place_id=workshop.id,
                    on=on,
                    quantity=offcuts_mg,
                    kind="yielded",
                    batch_id=batch.id,
                )
            )
            tx.add(Decision(lot_id=rest.id, verdict="accepted", on=on, by=by, reason="offcuts kept"))
        tx.say(f"Cut batch {batch.code} into {bars} bars.")
    return put_in


def strain_batch(book: Book, code: str, *, mass_mg: int, on: date, by: str) -> str:
    """Book the oil strained off an infusion as a new, accepted lot and return its code.

    What stays in the cloth is waste and is not declared. Its saponification value is that of the oil
    that went in; its best-before is the earliest of what went in. Raises Refused like `cut_batch`.
    """
    if mass_mg <= 0:
        raise BadInput("How much oil was strained off? Write its weight, such as 480 g.")
    with book.write("batch strain") as tx:
        batch = find_batch(tx.rows, code)
        _ready_to_yield(tx.rows, batch, on)
        if batch.process != "infusion":
            raise Refused(f"Batch {batch.code} is soap; it is cut: soapledger batch cut {batch.code} BARS")
        put_in = mass_in(tx.rows, batch.id)
        if mass_mg > put_in:
            units = settings(tx.rows).units
            raise Refused(
                f"{show_mass(mass_mg, units)} came out and only {show_mass(put_in, units)} went in; weigh again."
            )
        fats = tx.rows.execute(
            """
            SELECT l.best_before, l.sap_low_mg_per_kg AS low, l.sap_high_mg_per_kg AS high
            FROM lot l JOIN material m ON m.id = l.material_id
            WHERE m.kind IN ('fat', 'intermediate') AND l.id IN
              (SELECT lot_id FROM movement WHERE batch_id = ? GROUP BY lot_id HAVING sum(quantity) < 0)
            """,
            (batch.id,),
        ).fetchall()
        dates = [date.fromisoformat(row["best_before"]) for row in fats if row["best_before"]]
        certified = bool(fats) and all(row["low"] is not None for row in fats)
        lot = tx.add(
            Lot(
                code=next_lot_code(tx),
                material_id=batch.material_id,
                on=on,
                batch_id=batch.id,
                best_before=min(dates, default=None),
                sap_low_mg_per_kg=min(row["low"] for row in fats) if certified else None,
                sap_high_mg_per_kg=max(row["high"] for row in fats) if certified else None,
                certificate="of the oil that went in" if certified else None,
            )
        )
        assert lot.id is not None
        tx.add(
            Movement(
                lot_id=lot.id,
                place_id=place_of_kind(tx.rows, "workshop").id,
                on=on,
                quantity=mass_mg,
                kind="yielded",
                batch_id=batch.id,
            )
        )
        tx.add(Decision(lot_id=lot.id, verdict="accepted", on=on, by=by, reason="strained"))
        tx.say(f"Strained batch {batch.code} as lot {lot.code}.")
    return lot.code


def _ready_to_yield(rows: Rows, batch: BatchRow, on: date) -> None:
    if batch.discarded:
        raise Refused(f"Batch {batch.code} was discarded; nothing comes of it.")
    if batch.yield_lot_id is not None:
        raise Refused(f"Batch {batch.code} is {batch.status} already; see: soapledger batch show {batch.code}")
    if batch.open_lines:
        lines = "1 line" if batch.open_lines == 1 else f"{batch.open_lines} lines"
        raise Refused(f"Batch {batch.code} has {lines} still to be weighed: soapledger batch log {batch.code}")
    last = rows.execute(
        'SELECT max("on") FROM (SELECT "on" FROM live_movement WHERE batch_id = :batch '
        "UNION ALL SELECT \"on\" FROM live_reading WHERE batch_id = :batch AND what = 'poured')",
        {"batch": batch.id},
    ).fetchone()[0]
    made = max(batch.on, date.fromisoformat(last)) if last else batch.on
    if on < made:
        raise BadInput(f"Batch {batch.code} was still being made on {show_date(made)}; look at --on.")
