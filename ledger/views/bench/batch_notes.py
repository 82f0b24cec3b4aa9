"""The sentences that go with a batch: what its maker should know before she begins, and what stays on the record."""

from ledger.domain.lye.uncertainty import Superfat, all_low_warning
from ledger.domain.recipe.recipe import held_back_words
from ledger.rows.batch import BatchRow, plan_lines, portions_of
from ledger.rows.opened import Rows
from ledger.views.recipe.skin import batch_skin_checks


def notes_before(rows: Rows, batch: BatchRow) -> list[str]:
    """Lines without a lot, and the portions of a divided batch."""
    found = [
        f"{line.material}: no lot is set aside for it yet."
        for line in plan_lines(rows, batch.id)
        if line.lot_id is None and line.role != "dough"
    ]
    found += [
        f"At trace it divides: batch {child.code} is the portion {child.portion}."
        for child in portions_of(rows, batch.id)
    ]
    return found


def notes_that_stay(rows: Rows, batch: BatchRow, lowest: Superfat | None) -> list[str]:
    """All low at nothing, what becomes of a fat held back, fragrances without a certificate or over it."""
    found = [warning] if (warning := all_low_warning(lowest)) else []
    found += held_back_words(
        batch.process, [(line.material, line.stage) for line in plan_lines(rows, batch.id) if line.held_back]
    )
    if batch.part_of:
        found.append(f"A portion of batch {batch.part_of}, whose papers hold the fats and the lye.")
    return found + [one.words for one in batch_skin_checks(rows, batch) if one.verdict != "within"]
