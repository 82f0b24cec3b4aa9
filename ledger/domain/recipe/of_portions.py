"""Reads the portions a dough divides into, under [[portion]]."""

import re

from ledger.domain.recipe.file import RecipeFile
from ledger.domain.recipe.recipe import Portion
from ledger.errors import Refused
from ledger.units.quantity import WHOLE_PPM


def read_portions(source: RecipeFile) -> tuple[Portion, ...]:
    """The portions a dough divides into, whose shares make it whole. Raises BadInput or Refused with the place."""
    found = []
    for part in source.parts("portion"):
        name, share = part.word("name"), part.share("percent")
        if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", name):
            raise part.bad(f"name '{name}' takes small letters, digits and dashes only.", "name")
        if share is None:
            raise part.bad("percent is missing; write its share of the dough, percent = 60.")
        found.append(Portion(name, share, part.whole("bars")))
    _check(source, tuple(found))
    return tuple(found)


def bars_of(portions: tuple[Portion, ...]) -> int | None:
    """All the bars, where every portion says how many it gives."""
    bars = [one.bars for one in portions if one.bars]
    return sum(bars) if bars and len(bars) == len(portions) else None


def _check(source: RecipeFile, portions: tuple[Portion, ...]) -> None:
    names, first = [one.name for one in portions], source.one("portion")
    if len(set(names)) < len(names):
        raise first.bad("two portions have the same name; each gets a batch code of its own.")
    if len(names) == 1:
        raise first.bad("one portion is the whole dough; write two or more, or none.")
    if portions and (total := sum(one.share_ppm for one in portions)) != WHOLE_PPM:
        raise Refused(f"{first.place()}: the portions add up to {total / 10_000:.7g} %, not 100 %.")
    for table in ("additive", "fragrance"):
        for part in source.parts(table):
            portion = part.maybe_word("portion")
            if portion is not None and portion not in names:
                known = ", ".join(names) or "this recipe has none"
                raise part.bad(f"there is no portion '{portion}'; known: {known}.", "portion")
