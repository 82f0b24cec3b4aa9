"""Which names mean one ingredient: the INCI of a fat and of its soaps, a published name, one with brackets in it."""

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cache

from ledger.reference.find import published
from ledger.reference.shipped import table_rows
from ledger.reference.tables import ReferenceFat

_BRACKETS = re.compile(r"\s*\([^()]*\)")


def plain_inci(name: str) -> str:
    """An INCI name without what stands in brackets, as American labels write it: COCOS NUCIFERA (COCONUT) OIL."""
    return " ".join(_BRACKETS.sub(" ", name.upper()).split())


@cache
def _groups() -> Mapping[str, frozenset[str]]:
    """By plain name, the INCI names of what it may mean."""
    found: dict[str, set[str]] = defaultdict(set)
    for one in published().values():
        if one.inci is None:
            continue
        names = [one.inci, one.key, one.name, *one.aliases]
        if isinstance(one, ReferenceFat):
            names += [f"{one.key} oil", *filter(None, (one.inci_sodium, one.inci_potassium))]
        for name in names:
            found[plain_inci(name)].add(one.inci)
    for row in table_rows("essential_oils.csv"):
        found[plain_inci(f"{row['oil']} oil")].add(row["inci"])
    for row in table_rows("inci_synonyms.csv"):
        found[row["name"]].add(row["same_as"])
    return {name: frozenset(each) for name, each in found.items()}


def same_as(name: str, others: Iterable[str]) -> str | None:
    """The one of some names that means the same ingredient; None where none does, or more than one might."""
    own = _meant(name)
    found = {one for one in others if own & _meant(one)}
    return found.pop() if len(found) == 1 else None


def salt_of(names: Iterable[str], alkali: str) -> bool:
    """Whether a soap of that alkali is among some names, by the INCI name of the alkali."""
    salts = {plain_inci(one) for one in names}
    for one in published().values():
        if isinstance(one, ReferenceFat):
            salt = {"SODIUM HYDROXIDE": one.inci_sodium, "POTASSIUM HYDROXIDE": one.inci_potassium}.get(alkali)
            if salt in salts:
                return True
    return False


def _meant(name: str) -> frozenset[str]:
    plain = plain_inci(name)
    return _groups().get(plain, frozenset()) | {plain}
