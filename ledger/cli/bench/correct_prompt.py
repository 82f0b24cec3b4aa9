"""At the prompt: a weight that was refused stays as a note, and leads to what can be done about it."""

from collections.abc import Sequence
from datetime import date

from ledger.cli.bench.batch_correct import say_correction
from ledger.cli.bench.superfat import say_superfat
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import ask, warn
from ledger.errors import LedgerError
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.bench.weigh import Weighed
from ledger.rows.batch import BatchRow, PlanLineRow
from ledger.units.quantity import show_mass
from ledger.views.bench.correction import correction


def note_refused(
    here: Desk, batch: BatchRow, line: PlanLineRow, takes: Sequence[Weighed], words: str, made: date
) -> None:
    """Keep what was typed of a line as a note of the batch, with what became of it."""
    mass = show_mass(sum(one.quantity for one in takes), here.settings.units)
    text = f"line {line.number}, {line.material}: {mass} was {words}"
    log_readings(here.book(), batch.code, (ReadingValue("observation", text=text),), on=made)


def ask_way(
    here: Desk, batch: BatchRow, line: PlanLineRow, takes: Sequence[Weighed], made: date, anyway: str | None
) -> bool:
    """Say what can be done about a weight that was refused, and book the way she took; whether she took one."""
    mass_mg = sum(one.quantity for one in takes)
    of_lots = takes if any(one.lot_code or one.of for one in takes) else ()
    try:
        say_correction(correction(here.rows(), batch, line.number, mass_mg), here.settings.units)
    except LedgerError:  # it does not bear on the lye, or lye and fats have met
        return False
    while True:
        typed = ask("Which way did you take: lye, fats or pour? Enter: none, weigh again", default="").casefold()
        if not typed:
            return False
        try:
            check = loaded("operations.bench.correct").correct_batch(
                here.book(), batch.code, line.number, mass_mg, take=typed, on=made, by=here.who, anyway=anyway,
                of_lots=of_lots,
            )  # fmt: skip
        except LedgerError as error:
            warn(f"  {error}")
            continue
        say_superfat(check)
        return True
