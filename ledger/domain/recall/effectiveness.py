"""How many of those who have bars are asked whether a recall reached them: the levels of 21 CFR 7.42(b)(3)."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeVar, get_args

from ledger.errors import BadInput
from ledger.units.quantity import show_share
from ledger.units.words import known

Letter = Literal["A", "B", "C", "D", "E"]
# 21 CFR 7.42(b)(3)(i) to (v): B is fixed case by case, above 10 and below 100 %.
_PPM: dict[Letter, int | None] = {"A": 1_000_000, "B": None, "C": 100_000, "D": 20_000, "E": 0}
One = TypeVar("One")


@dataclass(frozen=True)
class Level:
    """One level, and the share of those who have bars that are asked."""

    letter: Letter
    ppm: int

    @property
    def words(self) -> str:
        """As it is kept and shown: C, or B 40."""
        return f"B {show_share(self.ppm, 0).removesuffix(' %')}" if self.letter == "B" else self.letter

    def asked_of(self, many: int) -> int:
        """How many of so many are asked; a part of one is one, which the law leaves open."""
        share = Fraction(self.ppm, 1_000_000) * many
        return -(-share.numerator // share.denominator)

    def chosen(self, those: Sequence[One]) -> tuple[One, ...]:
        """Who is asked: spread evenly over the list from its first (common practice, no source)."""
        wanted = self.asked_of(len(those))
        return tuple(those[turn * len(those) // wanted] for turn in range(wanted))


EVERYBODY = Level("A", 1_000_000)


def level(text: str) -> Level:
    """A level as typed: C, or B with its percentage. Raises BadInput."""
    letter = known(text.strip()[:1].upper(), get_args(Letter))
    behind = text.strip()[1:].strip().removesuffix("%").strip()
    if letter == "B" and re.fullmatch(r"\d{2}", behind) and int(behind) > 10:
        return Level("B", int(behind) * 10_000)
    ppm = _PPM[letter] if letter and not behind else None
    if letter is None or ppm is None:
        raise BadInput(
            f"'{text}' is no level; write A (all are asked), 'B 40' (a percentage between 10 and 100), C (10 %), "
            "D (2 %) or E (none)."
        )
    return Level(letter, ppm)
