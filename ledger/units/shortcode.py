"""Short names for suppliers, customers, materials and recipes: what she types instead of the whole name."""

import re
from collections.abc import Collection

from ledger.errors import BadInput
from ledger.units.signs import without_accents

_SHAPE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def short_code(name: str, taken: Collection[str]) -> str:
    """The name in small letters with dashes, and a number behind it where that is taken already.

    Raises BadInput when no letter or digit is left.
    """
    plain = without_accents(name).encode("ascii", "ignore").decode()
    code = "-".join(re.findall(r"[a-z0-9]+", plain))
    if not code:
        raise BadInput(f"'{name}' has no letter that a short name could be made of; add --code NAME.")
    if code not in taken:
        return code
    number = 2
    while f"{code}-{number}" in taken:
        number += 1
    return f"{code}-{number}"


def check_code(code: str, taken: Collection[str], *, noun: str) -> str:
    """A short name as typed; raises BadInput when it has other signs or is in use."""
    if not _SHAPE.fullmatch(code):
        raise BadInput(
            f"'{code}' cannot be a short name for a {noun}; use small letters, digits and dashes, such as oak-2."
        )
    if code in taken:
        raise BadInput(f"There is a {noun} '{code}' already; choose another --code, or edit that one.")
    return code
