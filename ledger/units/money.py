"""Money in whole minor units of one currency, and sharing it out so that the shares add up."""

from collections.abc import Sequence
from fractions import Fraction

from ledger.errors import BadInput
from ledger.units.currencies import DECIMALS
from ledger.units.quantity import parse_number
from ledger.units.wording import opening


def currency_digits(code: str) -> int:
    """How many decimals the currency has. Raises BadInput for a code that is not known."""
    if code not in DECIMALS:
        raise BadInput(f"'{code}' is not a currency known here; write its three capitals, such as EUR.")
    return DECIMALS[code]


# The signs that a price is written with; any other currency keeps its code. Common practice, no source.
SIGNS = {
    "GBP": "£", "USD": "$", "CAD": "$", "AUD": "$", "NZD": "$", "EUR": "€", "JPY": "¥", "PLN": "zł", "CZK": "Kč",
    "SEK": "kr", "NOK": "kr", "DKK": "kr",
}  # fmt: skip


def parse_money(text: str, currency: str, *, what: str = "the amount of money") -> int:
    """An amount such as 12.40 in minor units. Raises BadInput for more decimals than there are coins."""
    digits = currency_digits(currency)
    plain, sign = text.strip(), SIGNS.get(currency, currency)
    for own in (currency, sign):
        plain = plain.removeprefix(own).removesuffix(own).strip()
    if strange := next((one for one in dict.fromkeys(SIGNS.values()) if one in plain), None):
        raise BadInput(f"{opening(what)} '{text.strip()}' is written with {strange}, and money is {currency} here.")
    minor = parse_number(plain, what=what) * 10**digits
    if minor.denominator != 1:
        raise BadInput(
            f"{opening(what)} '{text.strip()}' has more decimals than {currency} has; write {digits} of them."
        )
    return int(minor)


def show_money(minor: int, currency: str) -> str:
    """Minor units as they are read: 12.40 EUR."""
    digits = currency_digits(currency)
    sign = "-" if minor < 0 else ""
    whole, rest = divmod(abs(minor), 10**digits)
    amount = f"{whole}.{rest:0{digits}d}" if digits else f"{whole}"
    return f"{sign}{amount} {currency}"


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
