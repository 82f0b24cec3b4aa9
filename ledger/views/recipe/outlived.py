"""Oils that are best before an earlier day than the bars they go into."""

from collections.abc import Iterable
from datetime import date

from ledger.domain.label.durability import last_day_printed
from ledger.rows.batch import BatchRow, plan_lines
from ledger.rows.lot import LotRow
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.units.dates import add_months, show_best_before
from ledger.views.recipe.ingredients import bases_of_lot
from ledger.views.stock.made_of import Compositions

_OILS = ("fat", "fragrance")


def outlived(lots: Iterable[LotRow], until: date) -> tuple[str, ...]:
    """The oils whose best before lies before a day, in words, the earliest first; each lot once."""
    late = {one.id: one for one in lots if one.kind in _OILS and one.best_before and one.best_before < until}
    order = sorted(late.values(), key=lambda one: (one.best_before, one.id))
    return tuple(f"{one.material}, lot {one.code}, {show_best_before(one.best_before or until)}" for one in order)


def outlived_as_planned(rows: Rows, batch: BatchRow) -> tuple[str, ...]:
    """The oils of the lots planned, down to those received, that the bars of the batch are to outlast."""
    recipe = recipe_of(rows, batch)
    if recipe is None or not batch.soap:
        return ()
    made = Compositions(rows)
    lots = [
        base.lot
        for line in plan_lines(rows, batch.id)
        if line.lot_id is not None and line.role != "packaging"
        for base in bases_of_lot(made, line.lot_id, line.target)
    ]
    return outlived(lots, last_day_printed(add_months(batch.on, recipe.best_before_months)))
