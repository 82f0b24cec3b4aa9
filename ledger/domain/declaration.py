"""The declaration of ingredients: INCI names in the order of their mass as added."""

import re
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from ledger.domain.saponification import WHOLE_PPM

_COLOUR_INDEX = re.compile(r"CI \d{5}")


@dataclass(frozen=True)
class Part:
    """One portion of one lot that went in."""

    inci: str
    mass_mg: int
    role: str
    lot_code: str


@dataclass(frozen=True)
class DeclaredIngredient:
    """One name on the label, with its share of all that was added and the lots it came from."""

    inci: str
    mass_mg: int
    share_ppm: int
    lots: tuple[str, ...]


def declare(
    parts: Iterable[Part], *, keep_fragrance_together: bool = False, aqua: str = "AQUA"
) -> tuple[DeclaredIngredient, ...]:
    """Merge equal names and order them by mass at the time of addition; colour index numbers last.

    Order by weight at the time of addition: Regulation (EC) 1223/2009, Art 19(1)(g), as quoted in
    secondary texts; colourants may follow in any order (same article). Fragrance kept together stands
    as PARFUM. What was strained out is not passed in, so it is not declared.
    """
    masses: dict[str, int] = defaultdict(int)
    lots: dict[str, set[str]] = defaultdict(set)
    for part in parts:
        name = " ".join(part.inci.upper().split())
        if keep_fragrance_together and part.role == "fragrance":
            name = "PARFUM"
        if name in ("AQUA", "WATER"):
            name = aqua
        masses[name] += part.mass_mg
        lots[name].add(part.lot_code)
    whole = sum(masses.values())
    order = sorted(masses, key=lambda name: (bool(_COLOUR_INDEX.fullmatch(name)), -masses[name], name))
    return tuple(
        DeclaredIngredient(
            name,
            masses[name],
            round(Fraction(masses[name] * WHOLE_PPM, whole)) if whole else 0,
            tuple(sorted(lots[name])),
        )
        for name in order
        if masses[name] > 0
    )
