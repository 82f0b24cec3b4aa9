"""The unit price: what a kilogram would cost, beside what the bar costs."""

from collections.abc import Callable
from fractions import Fraction

from ledger.errors import BadInput
from ledger.units.money import half_up

_KILOGRAM_MG = 1_000_000
_POUND_PENCE = 100
_POUND_NG, _KILOGRAM_NG = 453_592_370_000, 1_000_000_000_000
Said = Callable[[int], str]  # an amount in minor units as it is written where the bar is sold


def exact_per_kilogram(price_minor: int, net_mg: int) -> Fraction:
    """What a kilogram costs in minor units, exactly. Raises BadInput for no weight or a price below zero."""
    if net_mg <= 0:
        raise BadInput("A unit price needs the net weight; write it, such as 110 g.")
    if price_minor < 0:
        raise BadInput("A price cannot be below zero; look at it again.")
    return Fraction(price_minor * _KILOGRAM_MG, net_mg)


def per_kilogram(price_minor: int, net_mg: int) -> int:
    """What a kilogram costs, rounded half up to the minor unit (ours: no rule was found for it)."""
    return half_up(exact_per_kilogram(price_minor, net_mg))


def round_ni(pence: Fraction) -> Fraction:
    """A unit price in Northern Ireland: below one pound to 0.1p, half up (SR 2004/368 article 13, read).

    From one pound up to the penny, half up (memory).
    """
    return Fraction(half_up(pence * 10), 10) if pence < _POUND_PENCE else Fraction(half_up(pence))


def show_per_kilogram(price_minor: int, net_mg: int, said: Said) -> str:
    """The unit price as it is read: €59.09 per kg."""
    return f"{said(per_kilogram(price_minor, net_mg))} per kg"


def show_per_kilogram_ni(price_pence: int, net_mg: int, said: Said) -> str:
    """The unit price for Northern Ireland, in pounds: £59.09 per kg, and 12.4p per kg below one pound."""
    pence = round_ni(exact_per_kilogram(price_pence, net_mg))
    if pence >= _POUND_PENCE:
        return f"{said(int(pence))} per kg"
    whole, tenth = divmod(int(pence * 10), 10)
    return f"{whole}.{tenth}p per kg"


def show_per_pound(price_minor: int, net_mg: int, said: Said) -> str:
    """The price of a pound of 453.59237 g (NIST SP 811, read), rounded half up to the cent (ours): $29.48 per lb."""
    return f"{said(half_up(exact_per_kilogram(price_minor, net_mg) * _POUND_NG / _KILOGRAM_NG))} per lb"


def needed(price_minor: int, net_mg: int) -> bool:
    """Whether it differs from the price: a bar of exactly a kilogram needs none (Directive 98/6/EC, read)."""
    return exact_per_kilogram(price_minor, net_mg) != price_minor
