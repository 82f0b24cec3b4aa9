"""What a check finds."""

from typing import NamedTuple

RESTORE = "keep this file as it is, and go back to your last backup whose check is clean"
PUT_RIGHT = "the rows are as written, but no soapledger writes so: undo that entry, or book what puts it right"


class Finding(NamedTuple):
    """Something that does not hold, in words: in which entry, table and row, what was expected, what to do."""

    what: str
    entry: int | None = None
    table: str | None = None
    row: str | None = None  # by its trade name where it has one
    expected: str | None = None
    do: str = RESTORE
