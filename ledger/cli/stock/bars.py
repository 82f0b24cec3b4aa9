"""Reading CODE=NUMBER, as every command that moves bars takes it."""

from collections.abc import Iterable
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import warn
from ledger.errors import BadInput
from ledger.rows.lot import find_lot
from ledger.units.quantity import parse_pieces

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
