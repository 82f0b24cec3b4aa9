"""Reads the portions a dough divides into, under [[portion]]."""

import re

from ledger.domain.recipe import Portion
from ledger.domain.recipe_file import RecipeFile
from ledger.domain.saponification import WHOLE_PPM
from ledger.errors import Refused


def read_portions(source: RecipeFile) -> tuple[Portion, ...]:
    """The portions a dough divides into, whose shares make it whole. Raises BadInput or Refused with the place."""
    found = []
    for index, part in enumerate(source.tables("portion")):
        name, share = source.word(part, "name", "portion", index), source.percent(part, "percent", "portion", index)
        if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", name):
            raise source.bad("portion", index, f"name '{name}' takes small letters, digits and dashes only.", "name")
        if share is None:
            raise source.bad("portion", index, "percent is missing; write its share of the dough, percent = 60.")
        found.append(Portion(name, share, source.whole(part, "bars", "portion", index)))
    _check(source, tuple(found))
    return tuple(found)


def bars_of(portions: tuple[Portion, ...]) -> int | None:
    """All the bars, where every portion says how many it gives."""
    bars = [one.bars for one in portions if one.bars]
    return sum(bars) if bars and len(bars) == len(portions) else None


def _check(source: RecipeFile, portions: tuple[Portion, ...]) -> None:
    names = [one.name for one in portions]
    if len(set(names)) < len(names):
        raise source.bad("portion", 0, "two portions have the same name; each gets a batch code of its own.")
    if len(names) == 1:
        raise source.bad("portion", 0, "one portion is the whole dough; write two or more, or none.")
    if portions and (total := sum(one.share_ppm for one in portions)) != WHOLE_PPM:
        raise Refused(f"{source.place('portion')}: the portions add up to {total / 10_000:.7g} %, not 100 %.")
    for table in ("additive", "fragrance"):
        for index, part in enumerate(source.tables(table)):
            portion = source.maybe_word(part, "portion", table, index)
            if portion is not None and portion not in names:
                known = ", ".join(names) or "this recipe has none"
                raise source.bad(table, index, f"there is no portion '{portion}'; known: {known}.", "portion")
