"""Reading CODE=NUMBER, as every command that moves bars takes it."""

from collections.abc import Iterable, Mapping
from contextlib import suppress
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import count, say_wrapped, warn
from ledger.errors import BadInput, LedgerError
from ledger.rows.batch import find_batch
from ledger.rows.lot import find_lot
from ledger.units.quantity import parse_pieces
from ledger.views.label.bare import bars_without

BARS = Annotated[list[str], typer.Argument(help="Batches and numbers, e.g. 26-118-0=6.")]


def read_bars(texts: list[str]) -> dict[str, int]:
    """Batch codes with how many bars of each. Raises BadInput."""
    found: dict[str, int] = {}
    for text in texts:
        code, separator, number = text.partition("=")
        if not separator:
            raise BadInput(f"How many of '{text}'? Write it like {text}=6.")
        if code.strip() in found:
            raise BadInput(f"Batch {code.strip()} stands twice; write one number for it.")
        found[code.strip()] = parse_pieces(number, what=f"the number of bars of {code.strip()}")
    return found


def warn_of_holds(here: Desk, codes: Iterable[str]) -> None:
    """Say which of the lots just moved or used are on hold or rejected by now; what happened stays booked."""
    for code in codes:
        lot = find_lot(here.rows(), code)
        if lot.status in ("on hold", "rejected"):
            warn(f"{lot.code} ({lot.material}) is {lot.status} now; what happened before is booked all the same.")


def without_a_label(here: Desk, codes: Iterable[str]) -> dict[str, int]:
    """How many bars here have no label, of each batch that is known; what is not is refused where it is booked."""
    found = {}
    for code in codes:
        with suppress(LedgerError):
            found[code] = bars_without(here.rows(), find_batch(here.rows(), code))
    return found


def say_presumed_bare(here: Desk, before: Mapping[str, int]) -> None:
    """Say how many of the bars just moved are taken for bars without a label, which nobody looked at."""
    for code, now in without_a_label(here, before).items():
        if bars := before[code] - now:
            moved, first = ("gone", "to go") if bars > 0 else ("home again", "sold")
            are = "is" if abs(bars) == 1 else "are"
            say_wrapped(
                f"Of batch {code}, {count(abs(bars), 'bar')} without a label {are} counted as {moved}: where it is "
                f"sold bare, those without are taken to be the first {first}. Nobody looked which they were."
            )
