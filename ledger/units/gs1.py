"""Numbers and element strings after GS1, for who has a company prefix; none is ever made up."""

import re
from datetime import date

from ledger.errors import BadInput

# GS1 General Specifications (read: the identifiers, their lengths and the date; memory: the signs a lot may hold,
# and which prefixes are only for use inside one company).
_LOT = re.compile(r"[!\"%&'()*+,\-./0-9:;<=>?A-Z_a-z]{1,20}")
_INSIDE = re.compile(r"02|04|2")
_DIGITS = 13


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


def elements(gtin: str, *, lot: str, made_on: date) -> str:
    """The elements (01), (11) and, since its length is not fixed, (10) last, as they are printed beside a code.

    Raises BadInput for a GTIN that cannot be, or a lot that GS1 cannot hold.
    """
    if not _LOT.fullmatch(lot):
        raise BadInput(f"A lot in a GS1 code has 1 to 20 letters, digits or common signs; '{lot}' has not.")
    return f"(01){read_gtin(gtin).zfill(14)}(11){made_on:%y%m%d}(10){lot}"
