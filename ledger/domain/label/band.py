"""What stands on a band that a printer made, held against what the label of a batch has to say."""

import re
from collections.abc import Sequence
from typing import NamedTuple

from ledger.errors import BadInput

_WEIGHT = re.compile(r"\b\d+(?:[.,]\d+)?\s?(?:kg|g|oz|lb)\b", re.IGNORECASE)
_DATED = re.compile(r"\bbest (?:used )?before\b|\bbest by\b|\buse by\b", re.IGNORECASE)


class Declared(NamedTuple):
    """What the label of a batch says, of what a band may carry."""

    heading: str  # of the list of ingredients
    ingredients: tuple[str, ...]  # in their order, the allergens last; none where the market asks for none
    any_order: frozenset[str]  # of these, what may follow in any order
    said: tuple[tuple[str, str], ...]  # what else must stand there: what it is, and its words
    durability: tuple[str, ...] | None  # the words before the date, one for each language; None: no date, a period
    net_quantity: str


def check_band(text: str, heading: str | None, *, file: str) -> str:
    """The text of a band, a particular a line. Raises BadInput for an empty one, or one without its ingredients."""
    lines = "\n".join(" ".join(line.split()) for line in text.splitlines() if line.strip())
    if not lines:
        raise BadInput(f"{file} is empty; type into it what stands on the band, a particular a line.")
    if heading and _list_of(lines, heading) is None:
        raise BadInput(f"{file} has no line '{heading}: …'; type what stands on the band, each particular on one line.")
    return lines


def band_differences(text: str, declared: Declared) -> tuple[str, ...]:
    """Where a band says otherwise than the label of the batch has to; empty where nothing was found."""
    found = list(_ingredients(_list_of(text, declared.heading), declared)) if declared.ingredients else []
    loose = _loose(text)
    found += [f"the {what} is not on it: {words}" for what, words in declared.said if _loose(words) not in loose]
    dated = _DATED.search(text)
    if dated and declared.durability is None:
        found.append(f"it says '{dated[0]}', and the batch has a period after opening, not a date")
    elif dated and declared.durability and not all(_loose(one) in loose for one in declared.durability):
        found.append(
            f"it says '{dated[0]} …', and the date of the batch stands after '{' / '.join(declared.durability)}'"
        )
    weights = [one[0] for one in _WEIGHT.finditer(text)]
    if weights and not any(_close(one) in _close(declared.net_quantity) for one in weights):
        found.append(f"it says {' and '.join(weights)}, and the bars are declared at {declared.net_quantity}")
    return tuple(found)


def _ingredients(on_it: Sequence[str] | None, declared: Declared) -> list[str]:
    if on_it is None:
        return [f"it has no list that begins '{declared.heading}:'"]
    wanted = {_loose(name): name for name in declared.ingredients}
    has = {_loose(name): name for name in on_it}
    found = [f"{name} is in the batch and not on it" for key, name in wanted.items() if key not in has]
    found += [f"{name} is on it and not in the batch" for key, name in has.items() if key not in wanted]
    if found:
        return found
    free = {_loose(name) for name in declared.any_order}
    fixed = [key for key in wanted if key not in free]
    there = list(has)[: len(fixed)]
    for one, other in zip(fixed, there, strict=True):
        if one != other:
            return [f"{has[other]} stands on it where the batch has {wanted[one]}: the order is by weight"]
    return []


def _list_of(text: str, heading: str) -> list[str] | None:
    """The names of the line that begins with the heading; None where there is none."""
    for line in text.splitlines():
        head, colon, rest = line.partition(":")
        if colon and _loose(head) == _loose(heading):
            return [name.strip() for name in re.split(r",(?!\d)", rest.strip().removesuffix(".")) if name.strip()]
    return None


def _loose(text: str) -> str:
    """Words as they are compared: breaks, commas and capitals aside."""
    return " ".join(re.sub(r"[\s,;]+", " ", text).split()).casefold()


def _close(text: str) -> str:
    return re.sub(r"\s", "", text).casefold().replace(",", ".")
