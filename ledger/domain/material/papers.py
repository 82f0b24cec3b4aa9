"""The kinds of paper and picture kept, and which one is meant by a word."""

from ledger.errors import BadInput
from ledger.units.names import near

KINDS = (
    "CoA",
    "safety sheet",
    "photograph",
    "assessment report",
    "allergen statement",
    "IFRA certificate",
    "paper",
)


def kind_meant(text: str) -> str:
    """The kind meant by its name or the start of it. Raises BadInput with the list."""
    wanted = text.strip().casefold()
    exact = [kind for kind in KINDS if kind.casefold() == wanted]
    fits = exact or [kind for kind in KINDS if wanted and kind.casefold().startswith(wanted)]
    if len(fits) == 1:
        return fits[0]
    close = near(text, KINDS, 1)
    hint = f" Did you mean {close[0]}?" if close else ""
    raise BadInput(f"'{text}' is not a kind of paper known here.{hint} Write one of {', '.join(KINDS)}.")
