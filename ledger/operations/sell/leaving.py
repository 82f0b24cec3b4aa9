"""Whether bars of a batch may leave the workshop."""

from datetime import date

from ledger.domain.bench.status import in_words
from ledger.domain.release.supply import may_leave
from ledger.errors import BadInput, Refused
from ledger.operations.release.facts import bars_of, door_of, supply_of
from ledger.operations.release.first_supply import FirstSupplied, before_of, write_first_supply
from ledger.rows.batch import find_batch
from ledger.rows.lot import LotRow, PlaceRow, find_lot, on_hand_at, place_of_kind
from ledger.rows.people import CustomerCard
from ledger.rows.sell.assumed import booked_as
from ledger.storage.transaction import Transaction
from ledger.units.wording import count
from ledger.views.label.bare import Outlet


def may_go(
    tx: Transaction, code: str, number: int, on: date, first: FirstSupplied | None, to: PlaceRow | CustomerCard | None
) -> LotRow:
    """The bars of a batch, if so many of them may leave the workshop on that day, for a stall or a customer.

    Raises Refused.

    What is said of their first supply is kept where they leave by it.
    """
    lot = find_lot(tx.rows, code, on=on)
    if lot.kind != "soap":
        raise Refused(f"Lot {lot.code} is {lot.material}; only bars are sold or given, by their batch code.")
    if lot.status != "released":
        steps = {"curing": f"soapledger pass {lot.code}", "passed": f"soapledger release {lot.code}"}
        hint = f" Next: {steps[lot.status]}" if lot.status in steps else ""
        raise Refused(f"The bars of batch {lot.code} are {in_words(lot.status)}; only released bars leave.{hint}")
    workshop = place_of_kind(tx.rows, "workshop")
    held = min(on_hand_at(tx.rows, lot.id, workshop.id, on=on), on_hand_at(tx.rows, lot.id, workshop.id))
    if number <= 0:
        raise BadInput(f"How many bars of batch {lot.code}? Write a number above zero.")
    if number > held:
        raise Refused(
            f"Batch {lot.code} has {count(held, 'bar')} in the workshop; {number} cannot leave. Nothing was written."
            f"{booked_as(tx.rows, lot.id)}"
        )
    batch = find_batch(tx.rows, lot.code)
    bars, supply = bars_of(tx.rows, batch, on)[0], supply_of(tx.rows, batch, on)
    before = before_of(tx.rows, lot.id, first)
    stall = to is not None and isinstance(to, PlaceRow)
    outlet = Outlet(to.id if stall else None, None if stall else to.id) if to else Outlet()
    option = f"--{'stall' if stall else 'to'} {to.code}" if to else ""
    door = door_of(tx.rows, batch, outlet, on, option=option)
    if may_leave(bars, supply, on, number, before, recipe=batch.recipe_code, door=door) and first:
        write_first_supply(tx, lot.id, first, number, on=on)
    return lot
