"""The fatty acids of a fat or a recipe, as ranges, and the saponification value that they imply."""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.lye.saponification import KOH

# A triglyceride is three acids joined to glycerol (92.094 g/mol) with three waters (18.015 g/mol) lost.
_GLYCERYL = Fraction("92.094") - 3 * Fraction("18.015")


class FattyAcid(NamedTuple):
    """One fatty acid: its name, and its molar mass in g/mol."""

    name: str
    molar_mass: Fraction


class FattyAcidRange(NamedTuple):
    """The published range of one acid in a fat, as shares of its fatty acids in ppm."""

    acid: str
    low_ppm: int
    high_ppm: int
    source: str
    status: str


class ProfileLine(NamedTuple):
    """The range of one acid in a recipe's fats, in ppm of their fatty acids."""

    acid: str
    name: str
    low_ppm: int
    high_ppm: int


def implied_sap(ranges: Iterable[FattyAcidRange], acids: Mapping[str, FattyAcid], *, free: bool = False) -> int:
    """The saponification value, in mg KOH per kg, of triglycerides, or free acids, with the middles of those ranges.

    Mean M of the acids = total / Σ(share / M); M of the triglyceride = 3 M + 38.049;
    value = 3 × M(KOH) × 1000 / M of the triglyceride, of free acids M(KOH) × 1000 / M. Unsaponifiable matter is left
    out, so real fats lie a little lower.
    """
    middles = [(Fraction(one.low_ppm + one.high_ppm, 2), acids[one.acid].molar_mass) for one in ranges]
    mean = sum(share for share, _ in middles) / sum((share / mass for share, mass in middles), Fraction(0))
    return round(KOH * 1_000_000 / mean if free else 3 * KOH * 1_000_000 / (3 * mean + _GLYCERYL))


def far_from_profile(
    low_mg_per_kg: int, high_mg_per_kg: int, implied_mg_per_kg: int, unsaponifiable_ppm: int | None
) -> bool:
    """Whether a saponification value lies over 5 % from what a fatty-acid profile implies.

    What the fat may hold of unsaponifiable matter lowers the value by as much, and is allowed for.
    """
    least = Fraction(implied_mg_per_kg * (1_000_000 - (unsaponifiable_ppm or 0)), 1_000_000) * Fraction(95, 100)
    return high_mg_per_kg < least or low_mg_per_kg > implied_mg_per_kg * Fraction(105, 100)


def profile_of(
    fats: Sequence[tuple[int, Sequence[FattyAcidRange]]], acids: Mapping[str, FattyAcid]
) -> tuple[ProfileLine, ...]:
    """The range of each acid in a mix of fats, weighted by mass in mg; acids that cannot reach 0.1 % are left out.

    The ends are those that all fats reach together, so a real mix lies within them.
    """
    whole = sum(mass for mass, _ in fats)
    lows: dict[str, Fraction] = {}
    highs: dict[str, Fraction] = {}
    for mass, ranges in fats:
        for one in ranges:
            lows[one.acid] = lows.get(one.acid, Fraction(0)) + Fraction(mass * one.low_ppm, whole)
            highs[one.acid] = highs.get(one.acid, Fraction(0)) + Fraction(mass * one.high_ppm, whole)
    return tuple(
        ProfileLine(acid, acids[acid].name, round(lows[acid]), round(highs[acid]))
        for acid in acids
        if highs.get(acid, 0) >= 1000
    )
