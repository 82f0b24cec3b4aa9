"""The cut as it is asked at the bench, and how the prompt is left."""

from collections.abc import Callable
from datetime import date
from typing import TypeVar

from ledger.cli.bench.deviations import say_open, ticked
from ledger.cli.bench.in_hand import no_lot_here, stop, surely
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import ask, count, say, warn
from ledger.domain.bench.mass_balance import MassBalance
from ledger.domain.bench.steps import SEEN
from ledger.errors import LedgerError
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.readings import log_readings
from ledger.rows.batch import BatchRow, find_batch
from ledger.units.codes import looks_like_lot_code
from ledger.units.dates import show_date
from ledger.units.measures import scale_unit
from ledger.units.quantity import parse_mass, parse_pieces, show_mass, show_share, with_scale_unit
from ledger.views.bench.cut_doubts import CUT_WITHIN_DAYS, cut_doubts, days_since_the_pour

Read = TypeVar("Read")


def ask_cut(here: Desk, batch: BatchRow, today: date) -> None:
    """Ask for the cut until it is booked, or left for later."""
    unit = scale_unit(here.settings.units)

    def mass(typed: str) -> int:
        return parse_mass(with_scale_unit(typed, here.settings.units))

    late = days_since_the_pour(here.rows(), batch, today) > CUT_WITHIN_DAYS
    planned = f", {batch.bars_planned} planned" if batch.bars_planned else ""
    firm = False
    while True:
        bars = _until(f"Bars cut (how many{planned}; Enter: not cut yet)", batch.code, parse_pieces)
        if bars is None:
            return
        day = _until("Cut on", batch.code, here.day, usual=show_date(today), firm=firm or late) or today
        masses = [
            _until(f"{what}, {unit}", batch.code, mass, usual=none, firm=firm)
            for what, none in (
                ("All the bars together", "not weighed"),
                ("End slices and offcuts kept", "none"),
                ("Thrown away", "nothing"),
            )
        ]
        doubts = cut_doubts(here.rows(), batch, bars, masses[0], (masses[1] or 0) + (masses[2] or 0))
        for doubt in doubts:
            warn(f"  {doubt}")
        if doubts and not surely("", batch.code):
            firm = True
            continue
        try:
            balance = cut_batch(
                here.book(),
                batch.code,
                bars=bars,
                on=day,
                by=here.who,
                bars_mg=masses[0],
                offcuts_mg=masses[1] or 0,
                waste_mg=masses[2] or 0,
            )
        except LedgerError as error:
            warn(f"  {error}")
            firm = True
            continue
        say_cut(here, find_batch(here.rows(), batch.code), balance)
        return


def _until(
    question: str, code: str, read: Callable[[str], Read], *, usual: str | None = None, firm: bool = False
) -> Read | None:
    """One value, asked until it can be read; None for Enter, and q stops.

    Once an answer was refused, here or (`firm`) before, what is usual is typed as '-', so that no Enter books it.
    """
    while True:
        hint = f" ({'-' if firm else 'Enter'}: {usual})" if usual else ""
        typed = ask(f"{question}{hint}", default="")
        if typed.casefold() == "q":
            stop(code)
        if usual and firm and not typed:
            warn(f"  Enter books nothing here now. Type it, or - for {usual}; q stops.")
            continue
        try:
            return read(typed) if typed and (typed, firm) != ("-", True) else None
        except LedgerError as error:
            warn(f"  {error}")
            firm = True


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


def after_the_pour(here: Desk, code: str, was: BatchRow, today: date) -> None:
    """The cut, once the soap was poured on an earlier occasion; and the tick list of what was seen."""
    batch = find_batch(here.rows(), code)
    if was.poured and batch.soap and batch.yield_lot_id is None and not batch.open_lines:
        ask_cut(here, batch, today)
    if batch.soap and (batch.poured or batch.process == "rebatch") and not was.yield_lot_id:
        _seen(here, batch, today)
    say_open(here, batch)


def _seen(here: Desk, batch: BatchRow, today: date) -> None:
    listed = ", ".join(f"{place} {word}" for place, word in enumerate(SEEN, 1))
    warn(f"Seen? {listed}")
    while True:
        typed = ask("Numbers or your own words, with commas (Enter: nothing to note)", default="")
        if typed.casefold() in ("", "q"):
            return
        try:
            if looks_like_lot_code(typed):
                no_lot_here(typed, "what was seen")
            log_readings(here.book(), batch.code, ticked(typed), on=today)
        except LedgerError as error:
            warn(f"  {error}")
            continue
        return
