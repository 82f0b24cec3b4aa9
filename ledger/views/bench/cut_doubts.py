"""What to look at twice before a cut, or what is filled off, is booked."""

from datetime import date

from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.reading import last_worked_on, mass_in
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.units.quantity import show_mass, thousandfold

CUT_WITHIN_DAYS = 3  # a loaf is cut one to three days after the pour; common practice, no source
_SLIP = 5  # so many times off is a figure too many or too few rather than another plan; common practice, no source


def days_since_the_pour(rows: Rows, batch: BatchRow, today: date) -> int:
    """How many days ago the batch was last worked on: poured, or weighed where it is not poured."""
    return (today - (last_worked_on(rows, batch.id) or batch.on)).days


def cut_doubts(rows: Rows, batch: BatchRow, bars: int, bars_mg: int | None, rest_mg: int) -> tuple[str, ...]:
    """A sentence for each: a count far from the recipe's, bars that weigh far from what its bars do.

    A bar that is lighter when it is cut than half its declared weight, or more than three times as heavy, is another
    bar or another unit.
    """
    units, found = settings(rows).units, []
    planned = batch.bars_planned
    if planned and bars and not planned < _SLIP * bars < _SLIP**2 * planned:
        found.append(f"The recipe gives {planned} bars, and {bars} were cut.")
    recipe = recipe_of(rows, batch)
    net = recipe.net_weight_mg if recipe else None
    if bars_mg and bars and net and not net * bars <= 2 * bars_mg <= 6 * net * bars:
        together, each, declared = (show_mass(one, units) for one in (bars_mg, round(bars_mg / bars), net))
        slip = thousandfold(bars_mg, mass_in(rows, batch.id) - rest_mg, units)
        found.append(
            f"{bars} bars that weigh {together} weigh {each} each, and the recipe's {declared} after the cure{slip}."
        )
    return tuple(found)


def bulk_doubts(rows: Rows, batch: BatchRow, mass_mg: int) -> tuple[str, ...]:
    """A sentence where less than a fifth came of what went in, or none."""
    units, put_in = settings(rows).units, mass_in(rows, batch.id)
    if 0 < _SLIP * mass_mg < put_in:
        slip = thousandfold(mass_mg, put_in, units)
        return (f"{show_mass(mass_mg, units)} came of the {show_mass(put_in, units)} that went in{slip}.",)
    return ()
