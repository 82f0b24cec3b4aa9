"""The fragrance allergens that labels declare, their other names, and what essential oils usually hold of them."""

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

_HERE = Path(__file__).parent


@dataclass(frozen=True)
class Allergen:
    """One entry of Annex III to Regulation (EC) 1223/2009, by the name a label prints."""

    name: str
    entry: str
    first_list: bool  # among the first 26
    prohibited: bool  # no longer allowed at all
    source: str


@dataclass(frozen=True)
class Usual:
    """What an essential oil usually holds of a constituent, in ppm; for plausibility alone."""

    constituent: str
    low_ppm: int
    high_ppm: int
    source: str
    status: str


def _rows(name: str) -> Iterator[dict[str, str]]:
    with (_HERE / name).open(encoding="utf-8", newline="") as file:
        yield from csv.DictReader(file)


@cache
def allergens() -> Mapping[str, Allergen]:
    """Every entry, by its label name in small letters."""
    return {
        row["name"].casefold(): Allergen(
            row["name"], row["entry"], row["first_list"] == "yes", row["prohibited"] == "yes", row["source"]
        )
        for row in _rows("allergens.csv")
    }


@cache
def _aliases() -> Mapping[str, str]:
    return {row["alias"].casefold(): row["name"] for row in _rows("allergen_aliases.csv")}


@cache
def _oils() -> Mapping[str, str]:
    return {row["inci"].casefold(): row["name"] for row in _rows("allergen_oils.csv")}


def allergen_named(constituent: str) -> Allergen | None:
    """The entry that a constituent is declared under, by its own name or a member of the group; None for no entry."""
    word = " ".join(constituent.split()).casefold()
    return allergens().get(_aliases().get(word, word).casefold())


def allergen_of_oil(inci: str) -> Allergen | None:
    """The entry that a natural oil itself falls under; None for no entry."""
    name = _oils().get(" ".join(inci.split()).casefold())
    return allergens()[name.casefold()] if name else None


@cache
def _usual() -> Mapping[str, tuple[Usual, ...]]:
    found: dict[str, list[Usual]] = {}
    for row in _rows("essential_oils.csv"):
        low, high = (round(Fraction(row[key]) * 10_000) for key in ("low_percent", "high_percent"))
        found.setdefault(row["inci"].casefold(), []).append(
            Usual(row["constituent"], low, high, row["source"], row["status"])
        )
    return {inci: tuple(many) for inci, many in found.items()}


def usual_contents(inci: str) -> tuple[Usual, ...]:
    """What an oil of that INCI name usually holds; nothing for one not in the table."""
    return _usual().get(" ".join(inci.split()).casefold(), ())
