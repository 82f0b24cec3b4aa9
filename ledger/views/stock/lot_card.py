"""Everything known of one lot: where it came from, what was decided, where it went."""

from dataclasses import dataclass

from ledger.domain.lye.pot import Figures
from ledger.rows.decision import LotDecided, decided_of
from ledger.rows.kept import LotPaper, note_of, papers_of_lot
from ledger.rows.lot import LotRow, find_lot, set_aside_for, whereabouts
from ledger.rows.material import material_by_id
from ledger.rows.movement import LotMovement, happened_to
from ledger.rows.opened import Rows
from ledger.rows.sell.cost import Carried, carriage_of
from ledger.views.material.figures import figures_of


@dataclass(frozen=True)
class LotCard:
    """One lot, whole; `planned` names the planned batches it is set aside for, with how much."""

    lot: LotRow
    note_number: str | None
    here: tuple[tuple[str, int], ...]
    planned: tuple[tuple[str, int], ...]
    movements: tuple[LotMovement, ...]
    decisions: tuple[LotDecided, ...]
    papers: tuple[LotPaper, ...]
    carriage: Carried | None  # of its delivery, a share of which is in its cost
    figures: Figures  # what the lye goes by: its own, else its material's


def lot_card(rows: Rows, code: str) -> LotCard:
    """One lot by its code; raises like `find_lot`."""
    lot = find_lot(rows, code)
    return LotCard(
        lot=lot,
        note_number=note_of(rows, lot.id),
        here=tuple((place.name, held) for place, held in whereabouts(rows, lot.id)),
        planned=set_aside_for(rows, lot.id),
        movements=happened_to(rows, lot.id),
        decisions=decided_of(rows, lot.id),
        papers=papers_of_lot(rows, lot.id),
        carriage=carriage_of(rows, [lot.id]).get(lot.id),
        figures=figures_of(material_by_id(rows, lot.material_id), lot),
    )
