"""The kinds of upkeep, and when each is next due."""

from datetime import date
from typing import get_args

from ledger.units.dates import add_months
from ledger.units.words import UpkeepKind

KINDS: tuple[UpkeepKind, ...] = get_args(UpkeepKind)


def usual_next(kind: UpkeepKind, on: date) -> date | None:
    """When it is due again unless she says: a self-inspection a year later, of 29 February on the 28th."""
    return add_months(on, 12) if kind == "self-inspection" else None
