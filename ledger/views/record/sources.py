"""What several sections of a batch record are filled from, read once."""

from ledger.rows.batch import BatchRow, plan_lines
from ledger.rows.lot import lots_by_id
from ledger.rows.movement import came_out, went_in
from ledger.rows.opened import Rows
from ledger.rows.reading import current_readings
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.views.lye.lye_check import lye_check


class Sources:
    """One batch with its recipe, its lines and its lots."""

    def __init__(self, rows: Rows, batch: BatchRow) -> None:
        """Reads them, in as many statements for a long batch as for a short one."""
        self.rows, self.batch = rows, batch
        self.own, self.recipe = settings(rows), recipe_of(rows, batch)
        self.check, self.lines = lye_check(rows, batch.id), plan_lines(rows, batch.id)
        self.went_in, self.came_out = went_in(rows, batch.id), came_out(rows, batch.id)
        self.lots = lots_by_id(rows, {*self.came_out, *(one.lot_id for one in self.went_in)})
        self.readings = current_readings(rows, batch.id)
