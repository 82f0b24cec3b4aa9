"""The kinds of upkeep, and when each is next due."""

from datetime import date
from typing import get_args

from ledger.errors import BadInput
from ledger.units.dates import add_months
from ledger.units.names import near
from ledger.units.words import UpkeepKind

KINDS: tuple[UpkeepKind, ...] = get_args(UpkeepKind)


def kind_meant(text: str) -> UpkeepKind:
    """The kind of upkeep meant by its name or the start of it. Raises BadInput with the list."""
    wanted = text.strip().casefold()
    fits = [kind for kind in KINDS if wanted and kind.startswith(wanted)]
    if len(fits) == 1:
        return fits[0]
    close = near(text, KINDS, 1)
    hint = f" Did you mean {close[0]}?" if close else ""
    raise BadInput(f"'{text}' is not a kind of upkeep known here.{hint} Write one of {', '.join(KINDS)}.")


def usual_next(kind: UpkeepKind, on: date) -> date | None:
    """When it is due again unless she says: a self-inspection a year later, of 29 February on the 28th."""
    return add_months(on, 12) if kind == "self-inspection" else None
