"""One kind of words that a person questions before they are printed."""

from typing import NamedTuple


class Claim(NamedTuple):
    """The forms of one claim: patterns in which ' ' is a space or a hyphen, and '~' is one or nothing."""

    forms: tuple[str, ...]
    reason: str
    source: str
    status: str
    on_us_soap_only: bool = False
    signs: tuple[str, ...] = ()  # what is no word, and stands anywhere
