"""Which published material is meant by a word, and which one the name of a material calls it."""

import re
from collections.abc import Iterable, Mapping
from functools import cache

from ledger.reference.tables import Reference, ReferenceAlkali, acids, alkalis, fats, liquids
from ledger.units.names import match_name

_OF_ITS_KIND = frozenset({"oil", "oils", "butter", "fat", "wax", "seed", "milk"})  # so they tell none apart


@cache
def published() -> Mapping[str, Reference]:
    """Every published fat, alkali, acid and liquid, by its key."""
    return {**fats(), **alkalis(), **acids(), **liquids()}


def find_reference(text: str) -> Reference:
    """The one meant, by its key, its name or what people call it. Raises BadInput with near matches."""
    wanted = text.strip().casefold()
    for words in (wanted, " ".join(word for word in wanted.split() if word not in _OF_ITS_KIND)):
        for one in published().values():
            if words in {each.casefold() for each in (one.key, one.name, *one.aliases)}:
                return one
    key = match_name(
        text,
        [(one.key, one.name) for one in published().values()],
        noun="published material",
        add="soapledger material add NAME --kind fat --sap 188-192 (from its certificate), or --alkali NaOH. "
        "What there is: soapledger material add --like '?'",
    )
    return published()[key]


def called(name: str) -> frozenset[str]:
    """The keys of the published materials that a material's own name calls it, by the most of their words.

    'Palm kernel oil' is called palm kernel and not palm; a name that no publication has calls none.
    """
    words = _words(name)
    best, found = 0, set[str]()
    for one in published().values():
        for each in (one.key, one.name.partition("(")[0].partition(",")[0], *one.aliases):
            theirs = _words(each)
            score = len(theirs - _OF_ITS_KIND) or int(theirs == words)
            if theirs <= words and score and score >= best:
                found = {one.key} | (found if score == best else set())
                best = score
    return frozenset(found)


def named_so(name: str, one: Reference) -> bool:
    """Whether a material is called what it is like, so that the INCI name of that is its own; of alkalis always."""
    return isinstance(one, ReferenceAlkali) or one.key in called(name)


def _words(text: str) -> frozenset[str]:
    return frozenset(_parts(text))


def _parts(text: str) -> Iterable[str]:
    return (word for word in re.split(r"[^\w'/-]+", text.casefold()) if word)
