"""What stands on the label of a jar, a drum or a roll."""

from dataclasses import dataclass
from datetime import date

from ledger.errors import Refused
from ledger.reference.cautions import cautions
from ledger.rows.lot import LotRow, find_lot
from ledger.rows.opened import Rows
from ledger.units.quantity import show_share

ACCEPTED = "accepted"


@dataclass(frozen=True)
class LotLabel:
    """One lot, with its status as it stood on a day."""

    code: str
    material: str
    came_from: str
    received: bool  # else made here
    on: date
    best_before: date | None
    status: str
    as_of: date
    caution: str  # of lye; else empty

    @property
    def usable(self) -> bool:
        """Whether it may go into a batch."""
        return self.status == ACCEPTED


def lot_label(rows: Rows, code: str, today: date) -> LotLabel:
    """The label of a lot. Raises Refused for bars, which have labels of their own; else like `find_lot`."""
    lot = find_lot(rows, code)
    if lot.kind == "soap":
        raise Refused(
            f"Lot {lot.code} is bars; a label for bars is made with soapledger label print {lot.code}, "
            f"a card for the rack with soapledger label rack {lot.code}"
        )
    return LotLabel(
        code=lot.code,
        material=lot.material,
        came_from=_came_from(lot),
        received=lot.supplier_id is not None,
        on=lot.on,
        best_before=lot.best_before,
        status="out of date" if lot.out_of_date(today) else lot.status,
        as_of=today,
        caution=" ".join(cautions().by_step.get("jar", ())) if lot.kind == "alkali" else "",
    )


def _came_from(lot: LotRow) -> str:
    """The supplier with its lot number, or the batch that gave it, and the strength of a stock lye."""
    if lot.supplier is None:
        strength = f", {show_share(lot.purity_ppm)} alkali" if lot.kind == "alkali" and lot.purity_ppm else ""
        return f"From batch {lot.batch_code}{strength}" if lot.batch_code else ""
    if lot.supplier_own:
        return f"{lot.supplier}, own growing"
    return f"{lot.supplier}, lot {lot.supplier_number}" if lot.supplier_number else f"{lot.supplier}, lot unknown"
