"""Numbers and element strings after GS1, for who has a company prefix; none is ever made up."""

import re
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused

# GS1 General Specifications (read: the identifiers, their lengths and the date; memory: the signs a lot may hold,
# and which prefixes are only for use inside one company).
_LOT = re.compile(r"[!\"%&'()*+,\-./0-9:;<=>?A-Z_a-z]{1,20}")
_INSIDE = re.compile(r"02|04|2")
_DIGITS = 13


class Element(NamedTuple):
    """One application identifier and its data, such as 310 with three decimals: (3103)000110."""

    identifier: str
    data: str


def check_digit(digits: str) -> str:
    """The check digit of a GTIN without it. Raises BadInput for anything but digits."""
    if not re.fullmatch(r"[0-9]+", digits):
        raise BadInput(f"A GTIN has digits only, not '{digits}'.")
    from stdnum.ean import calc_check_digit  # here, like the check characters of our own codes

    digit: str = calc_check_digit(digits)
    return digit


def read_gtin(text: str) -> str:
    """A GTIN of 13 digits as typed, without its spaces and hyphens.

    Raises BadInput for another length, a check digit that does not fit (naming the right one), or a number that is for
    use inside one company only.
    """
    plain = re.sub(r"[\s\-\u2010-\u2015]+", "", text)
    if not re.fullmatch(rf"[0-9]{{{_DIGITS}}}", plain):
        raise BadInput(f"A GTIN here has {_DIGITS} digits, the last its check digit; '{text.strip()}' has not.")
    right = check_digit(plain[:-1])
    if plain[-1] != right:
        raise BadInput(
            f"'{text.strip()}' is not a GTIN: its check digit would be {right}, not {plain[-1]}. Read it again."
        )
    if _INSIDE.match(plain):
        raise BadInput(f"'{text.strip()}' begins like a number for use inside one company, which is no GTIN.")
    return plain


def elements(
    *,
    gtin: str | None,
    lot: str | None = None,
    made_on: date | None = None,
    best_before: date | None = None,
    net_mg: int | None = None,
) -> tuple[Element, ...]:
    """The elements (01), (11), (15), (310n) and, since its length is not fixed, (10) last.

    Raises Refused without a GTIN, BadInput for one that cannot be, a lot that GS1 cannot hold, or a weight that
    does not fit.
    """
    if gtin is None:
        raise Refused(
            "Element strings need a GTIN, and with it a GS1 company prefix of your own; none is made up here. "
            "Print the batch code by itself."
        )
    found = [Element("01", read_gtin(gtin).zfill(14))]
    if made_on is not None:
        found.append(Element("11", f"{made_on:%y%m%d}"))
    if best_before is not None:
        found.append(Element("15", f"{best_before:%y%m%d}"))
    if net_mg is not None:
        found.append(_net(net_mg))
    if lot is not None:
        if not _LOT.fullmatch(lot):
            raise BadInput(f"A lot in a GS1 code has 1 to 20 letters, digits or common signs; '{lot}' has not.")
        found.append(Element("10", lot))
    return tuple(found)


def _net(net_mg: int) -> Element:
    """The net kilograms, cut off as on the label: three decimals for whole grams, else four."""
    decimals, step = (3, 1000) if net_mg % 1000 == 0 else (4, 100)
    data = f"{net_mg // step:06d}"
    if net_mg < step or len(data) > 6:
        raise BadInput("A net weight in a GS1 code has six figures, from 0.1 g up; look at the weight again.")
    return Element(f"310{decimals}", data)


def in_words(found: tuple[Element, ...]) -> str:
    """The elements as they are printed beside the code: (01)06291041500213(3103)000110."""
    return "".join(f"({one.identifier}){one.data}" for one in found)
