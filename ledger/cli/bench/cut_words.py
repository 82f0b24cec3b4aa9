"""What came of a cut, on the screen."""

from ledger.cli.bench.deviations import say_open
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import count, say
from ledger.domain.bench.mass_balance import MassBalance
from ledger.rows.batch import BatchRow
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, show_share


def say_cut(here: Desk, batch: BatchRow, balance: MassBalance) -> None:
    """The bars on the rack, what is not accounted for, and what lies outside a limit."""
    units = here.settings.units
    assert batch.ready_on is not None
    say(f"{count(batch.made, 'bar')} of batch {batch.code} are on the rack; ready on {show_date(batch.ready_on)}.")
    if balance.loss_mg is not None and balance.loss_ppm is not None:
        cooked = f", {show_mass(balance.cooked_off_mg, units)} cooked off" if balance.cooked_off_mg else ""
        say(
            f"{show_mass(balance.put_in_mg, units)} went in{cooked}; {show_mass(balance.loss_mg, units)} "
            f"({show_share(balance.loss_ppm)}) lost to pot and air."
        )
    if batch.usable_from:
        say(f"Usable from {show_date(batch.usable_from)}, though not yet steady in weight (common practice).")
    say_open(here, batch)
