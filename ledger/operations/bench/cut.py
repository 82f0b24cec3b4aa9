"""The cut: bars, which carry the code of their batch, and offcuts."""

from collections.abc import Sequence
from datetime import date

from ledger.domain.bench.mass_balance import MassBalance
from ledger.errors import BadInput, Refused
from ledger.operations.bench.deviations import settle_deviations
from ledger.operations.bench.readings import ReadingValue, add_readings
from ledger.operations.house.setup import OFFCUTS
from ledger.operations.stock.receive import next_lot_code
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import place_of_kind
from ledger.rows.material import material_by_code
from ledger.rows.opened import Rows
from ledger.rows.reading import last_worked_on, mass_in
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.verbs import FirstDecision, NewLot
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass
from ledger.units.wording import count
from ledger.views.bench.bench import mass_balance

_INSTEAD = {
    "infusion": "strain it: soapledger batch strain {0} WEIGHT",
    "blend": "fill it off: soapledger batch fill {0} WEIGHT",
}
_DIVIDE = "its dough divides into portions: soapledger batch divide {0}"


def cut_batch(
    book: Book,
    code: str,
    *,
    bars: int,
    on: date,
    by: str,
    bars_mg: int | None = None,
    offcuts_mg: int = 0,
    waste_mg: int = 0,
    weights_mg: Sequence[int] = (),
) -> MassBalance:
    """Book the bars cut (they carry the batch's code), the offcuts and the waste; returns mass in against mass out.

    `weights_mg` are bars weighed one by one, all or a sample; all of them are the weight together. Raises Refused
    before everything is weighed and poured, after an earlier cut, or for more mass out than went in; BadInput for no
    bars, more weights than bars, or a day before the batch was made.
    """
    if bars <= 0:
        raise BadInput("How many bars were cut? Write a number above zero, such as 10.")
    with book.write("batch cut") as tx:
        batch = find_batch(tx.rows, code)
        if not batch.soap:
            raise Refused(
                f"Batch {batch.code} gives no bars; {_INSTEAD.get(batch.process, _DIVIDE)}".format(batch.code)
            )
        ready_to_yield(tx.rows, batch, on)
        if not batch.poured and batch.process != "rebatch":
            raise Refused(
                f"Batch {batch.code} is not booked as poured yet: "
                f"soapledger batch log {batch.code} --reading poured=14:05"
            )
        if len(weights_mg) > bars:
            raise BadInput(f"{len(weights_mg)} weights are too many for {count(bars, 'bar')}; weigh each bar once.")
        if bars_mg is None and len(weights_mg) == bars:
            bars_mg = sum(weights_mg)
        _no_more_than_went_in(tx.rows, batch, bars, bars_mg, offcuts_mg + waste_mg, weights_mg)
        workshop = place_of_kind(tx.rows, "workshop")
        lots = [NewLot(batch.code, batch.material_id, bars, mass_mg=bars_mg)]
        if offcuts_mg:
            offcuts, kept = material_by_code(tx.rows, OFFCUTS).id, FirstDecision("accepted", by, "offcuts kept")
            lots.append(NewLot(next_lot_code(tx), offcuts, offcuts_mg, decided=kept))
        tx.open_lots(lots, place_id=workshop.id, on=on, batch_id=batch.id)
        found = [ReadingValue("bar weight", one, "mg") for one in weights_mg]
        found += [ReadingValue("waste at the cut", waste_mg, "mg")] if waste_mg else []
        add_readings(tx, find_batch(tx.rows, code), found, on)  # of bars, which are there now
        settle_deviations(tx, batch.code, on=on, by=by)
        tx.say(f"Cut batch {batch.code} into {bars} bars.")
        return mass_balance(tx.rows, find_batch(tx.rows, code))


def _no_more_than_went_in(
    rows: Rows, batch: BatchRow, bars: int, bars_mg: int | None, rest_mg: int, weights_mg: Sequence[int]
) -> None:
    """Raise Refused for more mass out than went in, and for more bars than the mass allows."""
    units, put_in = settings(rows).units, mass_in(rows, batch.id)
    out = (bars_mg or 0) + rest_mg
    if out > put_in:
        raise Refused(
            f"{show_mass(out, units)} came out and only {show_mass(put_in, units)} went in; look at the "
            "weights again. Nothing was written."
        )
    odd = [one for one in weights_mg if bars_mg and not bars_mg <= 2 * bars * one <= 4 * bars_mg]
    if odd and bars_mg:
        mean = show_mass(bars_mg // bars, units)
        raise Refused(
            f"A bar of {show_mass(odd[0], units)} is not one of {bars} that weigh {show_mass(bars_mg, units)}, "
            f"{mean} each; weigh it again. Nothing was written."
        )
    recipe = recipe_of(rows, batch)
    each = min(weights_mg) if weights_mg else recipe.net_weight_mg if recipe and bars_mg is None else None
    if each is not None and bars * each + rest_mg > put_in:
        raise Refused(
            f"{count(bars, 'bar')} of {show_mass(each, units)} would weigh {show_mass(bars * each, units)}, and only "
            f"{show_mass(put_in, units)} went in; count them again, or say what they weigh. Nothing was written."
        )


def ready_to_yield(rows: Rows, batch: BatchRow, on: date) -> None:
    """Raise Refused for a batch discarded, done, or with lines open; BadInput for a day too early."""
    if batch.discarded:
        raise Refused(f"Batch {batch.code} was discarded; nothing comes of it.")
    if batch.yield_lot_id is not None:
        raise Refused(f"Batch {batch.code} is {batch.status} already; see: soapledger batch show {batch.code}")
    if batch.open_lines:
        lines = "1 line" if batch.open_lines == 1 else f"{batch.open_lines} lines"
        raise Refused(f"Batch {batch.code} has {lines} still to be weighed: soapledger batch log {batch.code}")
    last = last_worked_on(rows, batch.id)
    made = max(batch.on, last) if last else batch.on
    if on < made:
        raise BadInput(f"Batch {batch.code} was still being made on {show_date(made)}; look at --on.")
