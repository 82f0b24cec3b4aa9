"""Bars that may not leave booked back in as mass, for a rebatch."""

from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.operations.house.setup import OFFCUTS
from ledger.operations.stock.combine import next_batch_code
from ledger.operations.stock.receive import next_lot_code
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import LotRow, lot_by_id, on_hand_at, place_of_kind
from ledger.rows.material import material_by_code
from ledger.rows.opened import Rows
from ledger.rows.reading import mass_in
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.bench import Batch
from ledger.storage.verbs import FirstDecision, Moved, NewLot
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass
from ledger.units.wording import count


@dataclass(frozen=True)
class Reworked:
    """The bars taken, and the lot on hold that they became."""

    bars: int
    lot: str
    batch: str  # the batch that stands for the rework
    mass_mg: int


def rework_bars(book: Book, code: str, mass_mg: int, *, on: date, by: str, bars: int | None = None) -> Reworked:
    """Book bars in the workshop that are rejected or on hold (all, unless told) as a lot of offcuts on hold.

    It is a batch of its own, so that traces and recalls go through it. Raises Refused for bars that are neither, that
    are not there, or that weighed less at the cut; BadInput for no weight, no bars, or a day before they were there.
    """
    if mass_mg <= 0:
        raise BadInput("What do they weigh together? Write it like 820 g.")
    if bars is not None and bars <= 0:
        raise BadInput("How many bars are reworked? Write a number above zero, such as --bars 9.")
    with book.write("rework") as tx:
        batch = find_batch(tx.rows, code)
        if batch.yield_lot_id is None or not batch.soap:
            raise Refused(f"Batch {batch.code} is {batch.status}; it has no bars to rework.")
        lot = lot_by_id(tx.rows, batch.yield_lot_id, on=on)
        if on < lot.on:
            raise BadInput(f"Batch {batch.code} was cut on {show_date(lot.on)}; look at --on.")
        if lot.status not in ("rejected", "on hold"):
            raise Refused(
                f"The bars of batch {batch.code} are {lot.status}; only rejected bars are reworked: "
                f'soapledger reject {batch.code} --reason "…"'
            )
        workshop = place_of_kind(tx.rows, "workshop")
        here = on_hand_at(tx.rows, lot.id, workshop.id, on=on)
        taken = here if bars is None else bars
        if not taken or taken > here:
            raise Refused(
                f"Batch {batch.code} has {count(here, 'bar')} in the workshop"
                f"{f'; {taken} cannot be reworked' if taken else ''}."
            )
        weighed = _weighed(tx.rows, batch, lot, taken)
        if mass_mg > weighed:
            units = settings(tx.rows).units
            raise Refused(
                f"{count(taken, 'bar')} of batch {batch.code} weighed {show_mass(weighed, units)} at the cut, not "
                f"{show_mass(mass_mg, units)} now; look at the scale again. Nothing was written."
            )
        offcuts = material_by_code(tx.rows, OFFCUTS)
        work = tx.add(Batch(code=next_batch_code(tx, on), process="rework", material_id=offcuts.id, on=on))
        assert work.id is not None
        why = FirstDecision("on hold", by, f"{lot.status} bars of batch {batch.code}")
        new = NewLot(next_lot_code(tx), offcuts.id, mass_mg, decided=why)
        tx.move([Moved(lot.id, -taken, work.id, note=f"lot {new.code}")], "consumed", place_id=workshop.id, on=on)
        tx.open_lots([new], place_id=workshop.id, on=on, batch_id=work.id)
        tx.say(f"Reworked {count(taken, 'bar')} of batch {batch.code} as lot {new.code}.")
        return Reworked(taken, new.code, work.code, mass_mg)


def _weighed(rows: Rows, batch: BatchRow, lot: LotRow, bars: int) -> int:
    """What so many bars weighed at the cut; where they were not weighed, their share of all that went in."""
    return (lot.mass_mg or mass_in(rows, batch.id)) * bars // batch.made
