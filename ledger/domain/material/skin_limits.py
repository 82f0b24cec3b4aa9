"""Whether the fragrances in a bar at its driest stay within what their certificates allow on the skin."""

import re
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from ledger.units.quantity import WHOLE_PPM, show_share

# Soap that is rinsed off: category 9 of the fragrance industry's standard (from memory, unverified).
SOAP_CATEGORY = "9"


def is_for_soap(category: str) -> bool:
    """Whether a category as it was typed is the one of soap that is rinsed off."""
    return re.sub(r"^(category|cat\.?)\s*", "", category.strip().casefold()) == SOAP_CATEGORY


class Limit(NamedTuple):
    """The highest share in the finished product, in ppm, as a certificate states it for one kind of product."""

    limit_ppm: int
    certificate: str
    amendment: str | None
    category: str
    dated: date

    @property
    def most(self) -> str:
        """The share as it was stated, never rounded to more: 2.357 %, 2.3569 %."""
        return show_share(self.limit_ppm, 4 if self.limit_ppm % 10 else 3)

    @property
    def source(self) -> str:
        """Where it stands, in words."""
        amendment = f", amendment {self.amendment}" if self.amendment else ""
        category = f"category {self.category}" if self.category.strip() else "no category"
        return f"certificate {self.certificate}{amendment}, {category}"

    @property
    def for_soap(self) -> bool:
        """Whether it counts for soap; what it says of another kind of product, or of none, does not."""
        return is_for_soap(self.category)


class FragranceIn(NamedTuple):
    """What goes in and may hold what is limited: mg, its own limit, and what it contains, in ppm by name."""

    name: str
    mass_mg: int
    limit: Limit | None
    contains_ppm: Mapping[str, int]
    scent: bool = True  # a fragrance or essential oil, which has a limit of its own
    stated: bool = True  # whether anybody stated what it contains


class HeldAgainst(NamedTuple):
    """One fragrance or constituent: its share of the driest bar against its limit; None where there is none at all."""

    name: str
    share_ppm: Fraction
    limit: Limit | None
    constituent: bool = False  # added up over everything that holds it
    silent: tuple[str, ...] = ()  # of a constituent: whose content nobody stated, so that it is at least that share

    @property
    def over(self) -> bool:
        """Whether it exceeds its limit; a share equal to it does not, and a limit of other products is none."""
        return self.limit is not None and self.limit.for_soap and self.share_ppm > self.limit.limit_ppm


def compare_limits(
    fragrances: Sequence[FragranceIn],
    constituents: Mapping[str, Limit],
    *,
    driest_mg: int,
    counted_as: Callable[[str], str] = str.casefold,
) -> tuple[HeldAgainst, ...]:
    """Each fragrance on its own, then each restricted constituent added up over everything that holds it.

    `counted_as` gives one word for all the names of a constituent: its synonyms, and the members of a group. Shares
    are of the bar at its driest within its stock life, when they are highest. Where nobody stated what a fragrance
    contains, a constituent is compared even though none of it was found.
    """
    masses: dict[str, int] = {}
    limits: dict[str, Limit | None] = {}
    added: dict[str, Fraction] = {}
    for one in fragrances:
        if one.scent:
            masses[one.name] = masses.get(one.name, 0) + one.mass_mg
            limits[one.name] = one.limit
        for name, ppm in one.contains_ppm.items():
            key = counted_as(name)
            added[key] = added.get(key, Fraction(0)) + Fraction(one.mass_mg * ppm, WHOLE_PPM)
    silent = tuple(dict.fromkeys(one.name for one in fragrances if not one.stated))
    found = [HeldAgainst(name, Fraction(mass * WHOLE_PPM, driest_mg), limits[name]) for name, mass in masses.items()]
    for name, limit in constituents.items():
        mass = added.get(counted_as(name), Fraction(0))
        if mass or silent:
            found.append(HeldAgainst(name, mass * WHOLE_PPM / driest_mg, limit, True, silent))
    return tuple(found)
