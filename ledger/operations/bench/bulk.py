"""What is filled off in bulk: an oil strained off its herbs, a blend of fats, a stock lye."""

from datetime import date
from fractions import Fraction

from ledger.domain.lye.saponification import check_dissolves
from ledger.domain.lye.weighed import Weighed, dry_alkali, water_of
from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import ready_to_yield
from ledger.operations.bench.readings import ReadingValue, add_readings
from ledger.operations.stock.receive import next_lot_code
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import LotRow, lots_by_id, place_of_kind
from ledger.rows.movement import lots_used
from ledger.rows.reading import mass_in
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import FirstDecision, LotFigures, NewLot
from ledger.units.quantity import show_mass
from ledger.units.words import Process
from ledger.views.lye.lye_check import weighed_in


def strain_batch(book: Book, code: str, *, mass_mg: int, on: date, by: str, spent_mg: int = 0) -> str:
    """Book the oil strained off an infusion as a new, accepted lot and return its code.

    What stays in the cloth (`spent_mg`) is waste and is not declared. Its saponification value is that of the oil
    that went in; its best-before is the earliest of what went in. Raises Refused like `cut_batch`.
    """
    with book.write("batch strain") as tx:
        batch = _may_fill(tx, code, "infusion", mass_mg, on)
        if mass_mg + spent_mg > (put_in := mass_in(tx.rows, batch.id)):
            shown = (show_mass(one, settings(tx.rows).units) for one in (mass_mg, spent_mg, put_in))
            raise Refused("{} of oil and {} of spent solids are more than the {} that went in.".format(*shown))
        lot = _book(tx, batch, mass_mg, _of_the_oil(tx, batch), on=on, by=by, why="strained")
        if spent_mg:
            add_readings(tx, batch, [ReadingValue("spent solids", spent_mg, "mg")], on)
        tx.say(f"Strained batch {batch.code} as lot {lot}.")
    return lot


def fill_batch(book: Book, code: str, *, mass_mg: int, on: date, by: str) -> str:
    """Book a blend of fats or a stock lye, filled off into its container, as a new, accepted lot; returns its code.

    A blend carries the saponification values of its fats, weighted by mass; a stock lye its strength, worked out
    from what was weighed. Raises Refused like `cut_batch`.
    """
    with book.write("batch fill") as tx:
        batch = _may_fill(tx, code, "blend", mass_mg, on)
        parts = weighed_in(tx.rows, batch.id)
        dissolved = any(one.role == "alkali" for one in parts)
        if dissolved:
            check_dissolves(water_of(parts), dry_alkali(parts))
        figures = _stock_lye(parts) if dissolved else _blend(parts)
        lot = _book(tx, batch, mass_mg, figures, on=on, by=by, why="filled off")
        tx.say(f"Filled off batch {batch.code} as lot {lot}.")
    return lot


def _may_fill(tx: Transaction, code: str, process: Process, mass_mg: int, on: date) -> BatchRow:
    batch = find_batch(tx.rows, code)
    if mass_mg <= 0:
        raise BadInput("How much came of it? Write its weight, such as 480 g.")
    if batch.process != process:
        way = {
            "infusion": f"it is strained: soapledger batch strain {batch.code} WEIGHT",
            "blend": f"it is filled off: soapledger batch fill {batch.code} WEIGHT",
        }.get(batch.process, f"it is cut: soapledger batch cut {batch.code} BARS")
        raise Refused(f"Batch {batch.code} is {'soap' if batch.soap else batch.process}; {way}")
    ready_to_yield(tx.rows, batch, on)
    put_in = mass_in(tx.rows, batch.id)
    if mass_mg > put_in:
        units = settings(tx.rows).units
        raise Refused(f"{show_mass(mass_mg, units)} came out and only {show_mass(put_in, units)} went in; weigh again.")
    return batch


def _book(tx: Transaction, batch: BatchRow, mass_mg: int, figures: LotFigures, *, on: date, by: str, why: str) -> str:
    dates = [one.best_before for one in _oils(tx, batch) if one.best_before]
    lot = NewLot(
        next_lot_code(tx),
        batch.material_id,
        mass_mg,
        best_before=min(dates, default=None),
        figures=figures,
        decided=FirstDecision("accepted", by, why),
    )
    tx.open_lots([lot], place_id=place_of_kind(tx.rows, "workshop").id, on=on, batch_id=batch.id)
    return lot.code


def _of_the_oil(tx: Transaction, batch: BatchRow) -> LotFigures:
    """The range that holds for every oil that went in, where each lot has its own certificate."""
    ranges = [(one.sap_low_mg_per_kg, one.sap_high_mg_per_kg) for one in _oils(tx, batch)]
    low = [low for low, _ in ranges if low is not None]
    high = [high for _, high in ranges if high is not None]
    if not ranges or len(low) < len(ranges):
        return LotFigures()
    return LotFigures(min(low), max(high), certificate="of the oil that went in")


def _oils(tx: Transaction, batch: BatchRow) -> list[LotRow]:
    """The lots of fats that went in."""
    used = lots_by_id(tx.rows, lots_used(tx.rows, batch.id))
    return [lot for lot in used.values() if lot.kind in ("fat", "intermediate")]


def _blend(parts: tuple[Weighed, ...]) -> LotFigures:
    """Saponification values weighted by mass; a fat without one is named by BadInput.

    Wax esters count down to their acid value, since a drum does not say whether it will be cooked.
    """
    fats = [one.figures.fat(one.mass_mg, "cold") for one in parts if one.role in ("fat", "intermediate")]
    whole = sum(one.mass_mg for one in parts)
    low = Fraction(sum(fat.mass_mg * fat.sap_low_mg_per_kg for fat in fats), whole)
    high = Fraction(sum(fat.mass_mg * fat.sap_high_mg_per_kg for fat in fats), whole)
    return LotFigures(round(low), round(high), certificate="worked out from what went in")


def _stock_lye(parts: tuple[Weighed, ...]) -> LotFigures:
    """Its strength, a range where that of its alkali is: pure alkali over all that was weighed; and its water."""
    alkalis = [one for one in parts if one.role == "alkali"]
    whole = sum(one.mass_mg for one in parts)
    charges = [one.figures.alkali(one.mass_mg) for one in alkalis]
    low = round(Fraction(sum(one.mass_mg * one.purity_low_ppm for one in charges), whole))
    high = round(Fraction(sum(one.mass_mg * one.purity_high_ppm for one in charges), whole))
    water = sum((one.figures.water_mg(one.mass_mg) for one in parts if one.role == "liquid"), Fraction(0))
    water += sum(
        (one.figures.water_mg(one.mass_mg) for one in alkalis if one.figures.water_ppm is not None), Fraction(0)
    )
    return LotFigures(
        purity_ppm=low,
        purity_high_ppm=high if high > low else None,
        water_ppm=round(water * 1_000_000 / whole),
        certificate="worked out from what went in",
    )
