"""What is known to go wrong with some things, or with much of them: each said once, with where it stands."""

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from ledger.units.quantity import show_share
from ledger.units.words import Process, Stage


class Hazard(NamedTuple):
    """One row of the table. `of` says what is looked at: superfat, lye, share, present, fragrance or mould."""

    of: str
    words: tuple[str, ...]  # of a material's name, published name or INCI name, or of the mould
    stage: Stage | None  # only of what goes in then
    process: Process | None  # only in this process
    below_ppm: int | None
    over_ppm: int | None
    text: str
    source: str


class InRecipe(NamedTuple):
    """One material as it goes in, all lines of it that go in at one time; its share of the fats in ppm."""

    name: str
    called: str  # its name, published name and INCI name together
    fragrance: bool
    stage: Stage
    share_ppm: int


class Look(NamedTuple):
    """A recipe or a batch as far as it is looked at."""

    process: Process
    materials: Sequence[InRecipe]
    superfat_ppm: int
    lye_ppm: int  # the alkali as a share of what is in the jug
    mould: str | None


def hazards_in(look: Look, table: Iterable[Hazard]) -> list[str]:
    """A sentence for each hazard that is there, with its source; a figure at its limit is none."""
    return [said for row in table if row.process in (None, look.process) and (said := _said(row, look))]


def _said(row: Hazard, look: Look) -> str | None:
    found: list[InRecipe] = []
    share: int | None
    if row.of == "superfat":
        share = look.superfat_ppm
    elif row.of == "lye":
        share = look.lye_ppm
    elif row.of == "mould":
        share = 0 if _named(row, look.mould or "") else None
    else:
        found = [
            one
            for one in look.materials
            if (one.fragrance if row.of == "fragrance" else _named(row, one.called)) and row.stage in (None, one.stage)
        ]
        share = sum(one.share_ppm for one in found) if found else None
    below = row.below_ppm is not None and share is not None and share >= row.below_ppm
    over = row.over_ppm is not None and share is not None and share <= row.over_ppm
    if share is None or below or over:
        return None
    names = " and ".join(dict.fromkeys(one.name for one in found))
    text = row.text.format(names=names, share=show_share(share))
    return f"{text.removesuffix('.')} ({row.source})."


def _named(row: Hazard, text: str) -> bool:
    return any(re.search(rf"\b{re.escape(word)}\b", text.casefold()) for word in row.words)
