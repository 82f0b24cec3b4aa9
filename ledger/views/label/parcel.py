"""The text of a parcel's label."""

from dataclasses import dataclass


@dataclass(frozen=True)
class ParcelText:
    """To whom and from whom it goes, a line for each part of an address; and which delivery it is."""

    to: tuple[str, ...]
    sender: tuple[str, ...]
    name: str  # sale 12
