"""Money in whole minor units of one currency, and sharing it out so that the shares add up."""

import re
from collections.abc import Sequence
from fractions import Fraction

from ledger.errors import BadInput
from ledger.units.currencies import DECIMALS, SIGNS
from ledger.units.quantity import parse_number
from ledger.units.wording import opening

# A sign or a code before or behind the number, with or without a space.
_SIGNED = re.compile(r"(?P<before>[^\d.,+−-]*)(?P<number>.*?)(?P<behind>[^\d.,]*)", re.DOTALL)


def currency_digits(code: str) -> int:
    """How many decimals the currency has. Raises BadInput for a code that is not known."""
    if code not in DECIMALS:
        raise BadInput(f"'{code}' is not a currency known here; write its three capitals, such as EUR.")
    return DECIMALS[code]


def parse_money(text: str, currency: str, *, what: str = "the amount of money") -> int:
    """An amount such as 12.40 in minor units; a sign or code of the currency may stand beside it: €12.40, 12,40 EUR.

    Raises BadInput for another currency, and for more decimals than there are coins.
    """
    digits = currency_digits(currency)
    minor = parse_number(_without_sign(text, currency, what), what=what) * 10**digits
    if minor.denominator != 1:
        raise BadInput(
            f"{opening(what)} '{text.strip()}' has more decimals than {currency} has; write {digits} of them."
        )
    return int(minor)


def _without_sign(text: str, currency: str, what: str) -> str:
    """The number alone, where what stands beside it is the currency; else the text, which no number is read from."""
    found = _SIGNED.fullmatch(text.strip())
    beside = [found[side].strip() for side in ("before", "behind") if found[side].strip()] if found else []
    if not found or not beside or not found["number"].strip():
        return text
    for sign in beside:
        meant = (sign.upper(),) if sign.upper() in DECIMALS else SIGNS.get(sign.casefold(), ())
        if meant and currency not in meant:
            raise BadInput(
                f"{opening(what)} '{text.strip()}' is not in {currency}, the money of this ledger; "
                f"write it in {currency}."
            )
        if not meant or len(beside) > 1:
            return text
    return found["number"].strip()


def show_money(minor: int, currency: str) -> str:
    """Minor units as they are read: 12.40 EUR."""
    digits = currency_digits(currency)
    sign = "-" if minor < 0 else ""
    whole, rest = divmod(abs(minor), 10**digits)
    amount = f"{whole}.{rest:0{digits}d}" if digits else f"{whole}"
    return f"{sign}{amount} {currency}"


def figure(minor: int, currency: str) -> str:
    """Minor units as they are typed or stand in a column of one currency: 12.40."""
    return show_money(minor, currency).removesuffix(f" {currency}")


def half_up(value: Fraction) -> int:
    """The nearest whole number; a half goes up."""
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)


def share_of(total_minor: int, whole: int, before: int, after: int) -> int:
    """The share of a total that the stretch from `before` to `after` of `whole` bears.

    Cumulative rounding, half up: stretches that together make the whole add up to the total exactly.
    """
    if whole <= 0:
        raise BadInput("Nothing cannot be shared out.")
    return (2 * total_minor * after + whole) // (2 * whole) - (2 * total_minor * before + whole) // (2 * whole)


def share_out(total_minor: int, weights: Sequence[int]) -> list[int]:
    """The total shared by weight; the shares add up to it exactly. Raises BadInput for no weight at all."""
    whole = sum(weights)
    if whole <= 0:
        raise BadInput("Nothing cannot be shared out.")
    shares, before = [], 0
    for weight in weights:
        shares.append(share_of(total_minor, whole, before, before + weight))
        before += weight
    return shares
