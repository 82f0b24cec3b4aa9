"""Tax on what is sold: within a gross amount or on top of a net one, and which of the rates that were set holds.

Each line is rounded by itself to the minor unit, half up. A return mirrors a sale, so what is below zero is rounded
as its opposite is.
"""

from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from ledger.units.money import half_up
from ledger.units.quantity import WHOLE_PPM


def tax_within(gross_minor: int, rate_ppm: int) -> int:
    """The tax that stands in a gross amount: gross × rate / (100 % + rate)."""
    return _nearest(gross_minor, Fraction(rate_ppm, WHOLE_PPM + rate_ppm))


def tax_upon(net_minor: int, rate_ppm: int) -> int:
    """The tax that comes on top of a net amount."""
    return _nearest(net_minor, Fraction(rate_ppm, WHOLE_PPM))


def _nearest(amount_minor: int, share: Fraction) -> int:
    tax = half_up(abs(amount_minor) * share)
    return -tax if amount_minor < 0 else tax


class Rate(NamedTuple):
    """A rate as it was set: of a product or of all, at an outlet, for a country or everywhere, from a day on."""

    id: int
    recipe_id: int | None
    place_id: int | None
    customer_id: int | None
    country: str | None
    on: date
    rate_ppm: int | None  # None: from that day on none is booked
    name: str


class Where(NamedTuple):
    """Where something is sold: at a place, to a customer, who is in a country."""

    place_id: int | None = None
    customer_id: int | None = None
    country: str | None = None


def rate_that_holds(rates: Iterable[Rate], recipe_id: int | None, where: Where, on: date) -> Rate | None:
    """The rate for a product (None: what is no product) at an outlet on a day; None where no tax is booked.

    Of each kind the latest by its day counts. The place wins over the customer, the customer over the country, and that
    over everywhere; within each what was set for the product wins over what was set for all.
    """
    found: tuple[tuple[int, bool, date, int], Rate] | None = None
    for rate in rates:
        if rate.on > on or rate.recipe_id not in (None, recipe_id):
            continue
        if rate.place_id is not None:
            fits, rank = rate.place_id == where.place_id, 3
        elif rate.customer_id is not None:
            fits, rank = rate.customer_id == where.customer_id, 2
        elif rate.country is not None:
            fits, rank = rate.country == where.country, 1
        else:
            fits, rank = True, 0
        order = (rank, rate.recipe_id is not None, rate.on, rate.id)
        if fits and (found is None or order > found[0]):
            found = (order, rate)
    return found[1] if found and found[1].rate_ppm is not None else None
