"""A lot for what is in the pot of a material, where nobody knows from which delivery it came."""

from datetime import date

from ledger.errors import BadInput
from ledger.operations.stock.receive import next_lot_code
from ledger.rows.batch import BatchRow
from ledger.rows.lot import NOBODY, LotRow, lot_by_id, place_of_kind
from ledger.rows.material import MaterialCard
from ledger.rows.people import supplier_list
from ledger.storage.tables.supplier import Supplier, SupplierRevision
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import FirstDecision, NewLot
from ledger.units.shortcode import short_code


def lot_of_nobody(tx: Transaction, batch: BatchRow, card: MaterialCard, quantity: int, on: date) -> LotRow:
    """Book so much (mg) of a material as a lot without a number, so that no recall of the material excludes it.

    No drum is touched: a count finds what is missing there. Raises BadInput for what is counted in pieces.
    """
    if card.counted:
        raise BadInput(f"{card.name} is counted in pieces and not weighed.")
    new = NewLot(
        next_lot_code(tx),
        card.id,
        quantity,
        decided=FirstDecision("accepted", tx.who, "it is in the pot, and its lot is not known"),
        note=f"went into batch {batch.code}; it is not known from which lot",
    )
    workshop = place_of_kind(tx.rows, "workshop")
    (number,) = tx.open_lots([new], place_id=workshop.id, on=on, supplier_id=_nobody(tx))
    return lot_by_id(tx.rows, number, on=on)


def _nobody(tx: Transaction) -> int:
    """The row of the supplier whom nobody knows, made when it is first needed."""
    known = supplier_list(tx.rows)
    found = next((one.id for one in known if one.name == NOBODY), None)
    if found is None:
        found = tx.add(Supplier(code=short_code(NOBODY, {one.code for one in known}), own=0)).id
        assert found is not None
        tx.add(SupplierRevision(supplier_id=found, name=NOBODY))
    return found
