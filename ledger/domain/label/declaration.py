"""The declaration of ingredients: INCI names in the order of their mass, as added or as saponified."""

import re
from collections import defaultdict
from collections.abc import Iterable
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import UsedAs

_COLOUR_INDEX = re.compile(r"CI \d{5}(?::\d)?(?: \(NANO\))?")
_WATERS = ("AQUA", "WATER")
Floats = Literal["below 1 %", "not more than 1 %", "none"]


class Part(NamedTuple):
    """One portion of one lot that went in."""

    inci: str
    mass_mg: int
    role: UsedAs
    lot_code: str


class Naming(NamedTuple):
    """The words of a market: what water and fragrance are called, and which ingredients may follow in any order."""

    aqua: str = "AQUA"
    fragrance: str | None = None  # the one word for all fragrance; None: each oil by its own name
    floats: Floats = "below 1 %"


class DeclaredIngredient(NamedTuple):
    """One name on the label, with its share of all that was added and the lots it came from."""

    inci: str
    mass_mg: int
    share_ppm: int
    lots: tuple[str, ...]
    floats: bool = False  # small enough to follow in any order


def declare(parts: Iterable[Part], naming: Naming | None = None) -> tuple[DeclaredIngredient, ...]:
    """Merge equal names and order them by mass at the time of addition; colour index numbers last.

    Order by weight at the time of addition: Regulation (EC) 1223/2009, Art 19(1)(g), as quoted in
    secondary texts; colourants may follow in any order (same article). EU and GB: what is below 1 % may follow in any
    order (from memory, unverified); US: what is not more than 1 % (21 CFR 701.3(f), read). A trace that was named
    without a mass stands behind the rest. What was strained out is not passed in, so it is not declared.
    """
    naming = naming or Naming()
    masses: dict[str, int] = defaultdict(int)
    lots: dict[str, set[str]] = defaultdict(set)
    for part in parts:
        name = " ".join(part.inci.upper().split())
        if naming.fragrance and part.role == "fragrance":
            name = naming.fragrance
        if name in _WATERS:
            name = naming.aqua
        masses[name] += part.mass_mg
        lots[name].add(part.lot_code)
    whole = sum(masses.values())
    order = sorted(masses, key=lambda name: (is_colourant(name), -masses[name], name))
    return tuple(
        DeclaredIngredient(
            name,
            masses[name],
            round(Fraction(masses[name] * WHOLE_PPM, whole)) if whole else 0,
            tuple(sorted(lots[name])),
            floats(masses[name], whole, naming.floats),
        )
        for name in order
    )


def is_colourant(name: str) -> bool:
    """Whether it is declared by its colour index number."""
    return bool(_COLOUR_INDEX.fullmatch(name))


def floats(mass_mg: int, whole_mg: int, rule: Floats) -> bool:
    """Whether an ingredient may follow in any order: below 1 %, or not more than 1 %, exactly."""
    over = mass_mg * 100 - whole_mg
    return rule != "none" and (over < 0 or (over == 0 and rule == "not more than 1 %"))


def declared_line(declared: Iterable[DeclaredIngredient], allergens: Iterable[str]) -> str:
    """The list as it is printed: ingredients, allergens, then colourants.

    An allergen that is declared as an ingredient already, under the very same name, is not repeated.
    """
    found = list(declared)
    names = {one.inci.casefold() for one in found}
    added = [name.upper() for name in allergens if name.casefold() not in names]
    plain = [one.inci for one in found if not is_colourant(one.inci)]
    return ", ".join([*plain, *added, *(one.inci for one in found if is_colourant(one.inci))])
