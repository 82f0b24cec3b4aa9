"""Whether the fragrances in a bar at its driest stay within what their certificates allow on the skin."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from ledger.domain.saponification import WHOLE_PPM


@dataclass(frozen=True)
class Limit:
    """The highest share in the finished product, in ppm, as a certificate states it for one kind of product."""

    limit_ppm: int
    certificate: str
    amendment: str | None
    category: str
    dated: date

    @property
    def source(self) -> str:
        """Where it stands, in words."""
        amendment = f", amendment {self.amendment}" if self.amendment else ""
        return f"certificate {self.certificate}{amendment}, category {self.category}"


@dataclass(frozen=True)
class FragranceIn:
    """A fragrance or essential oil that goes in: mg, its own limit, and what it contains, in ppm by name."""

    name: str
    mass_mg: int
    limit: Limit | None
    contains_ppm: Mapping[str, int]


@dataclass(frozen=True)
class Compared:
    """One fragrance or constituent: its share of the driest bar against its limit; None where there is no limit."""

    name: str
    share_ppm: Fraction
    limit: Limit | None

    @property
    def over(self) -> bool:
        """Whether it exceeds its limit; a share equal to it does not."""
        return self.limit is not None and self.share_ppm > self.limit.limit_ppm


def compare_limits(
    fragrances: Sequence[FragranceIn], constituents: Mapping[str, Limit], *, driest_mg: int
) -> tuple[Compared, ...]:
    """Each fragrance on its own, then each restricted constituent added up over all of them.

    Shares are of the bar at its driest within its stock life, when they are highest.
    """
    masses: dict[str, int] = {}
    limits: dict[str, Limit | None] = {}
    added: dict[str, Fraction] = {}
    for one in fragrances:
        masses[one.name] = masses.get(one.name, 0) + one.mass_mg
        limits[one.name] = one.limit
        for name, ppm in one.contains_ppm.items():
            key = name.casefold()  # one supplier writes linalool, another Linalool
            added[key] = added.get(key, Fraction(0)) + Fraction(one.mass_mg * ppm, WHOLE_PPM)
    found = [Compared(name, Fraction(mass * WHOLE_PPM, driest_mg), limits[name]) for name, mass in masses.items()]
    known = {name.casefold(): (name, limit) for name, limit in constituents.items()}
    for name, mass in added.items():
        if name in known:
            shown, limit = known[name]
            found.append(Compared(shown, mass * WHOLE_PPM / driest_mg, limit))
    return tuple(found)
