"""Bars in which something else went in than was logged are held until a person decides."""

from datetime import date

from ledger.errors import Refused
from ledger.rows.batch import BatchRow
from ledger.rows.decision import open_deviations
from ledger.rows.lot import lots_by_id
from ledger.rows.movement import graph_from
from ledger.rows.settings import settings
from ledger.storage.tables.decision import Decision
from ledger.storage.transaction import Transaction
from ledger.units.quantity import show_mass
from ledger.views.bench.bench import mass_balance


def hold_what_came_of_it(tx: Transaction, batch: BatchRow, *, on: date, by: str) -> None:
    """Put on hold what a batch gave and all that came of that, where a deviation of it is open.

    What is held or rejected stays so. Raises Refused where less would have gone in than came out.
    """
    balance = mass_balance(tx.rows, batch)
    out, there = (balance.out_mg or 0) + balance.offcuts_mg + balance.waste_mg, balance.put_in_mg
    if there < out:
        units = settings(tx.rows).units
        raise Refused(
            f"Batch {batch.code} gave {show_mass(out, units)}, and only {show_mass(there, units)} would have gone in. "
            "Write what else went in in its place; nothing was written."
        )
    found = open_deviations(tx.rows, batch.id)
    if not found:
        return
    reason = f"deviation {found[-1].number} of batch {batch.code}: {found[-1].found}"
    reached = graph_from(tx.rows, [("batch", batch.id)], "down").downstream([("batch", batch.id)]).of_kind("lot")
    for lot in lots_by_id(tx.rows, reached).values():
        if lot.status not in ("on hold", "rejected"):
            tx.add(Decision(lot_id=lot.id, verdict="on hold", on=max(on, lot.on), by=by, reason=reason))
