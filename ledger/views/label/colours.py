"""The colours and nanomaterials among the ingredients of a bar, beside what is known here of them."""

from collections.abc import Iterable

from ledger.domain.label.declaration import is_colourant
from ledger.domain.label.market import ColourRule
from ledger.reference.colours import Colour, colour_of
from ledger.units.words import MaterialKind

_MEMORY = "from memory, unverified"


def colours_stand(inside: Iterable[tuple[str, MaterialKind]], rule: ColourRule | None) -> tuple[str, str]:
    """What colours, by INCI name, and how it lies to the list of the market; a person decides about each."""
    found = []
    for inci, kind in inside:
        known = colour_of(inci)
        if kind == "colourant" or is_colourant(inci) or (known and known.listed != {"annex_iv": None, "us": None}):
            found.append(_words(inci, kind, known, rule))
    if not found:
        return "nothing went in by a CI number, booked as a colourant, or known here to colour", "found"
    return "; ".join(dict.fromkeys(found)), "for a person"


def _words(inci: str, kind: MaterialKind, known: Colour | None, rule: ColourRule | None) -> str:
    if rule is None or known is None:
        return f"{inci}: not known here; look it up"
    colours = kind == "colourant" or is_colourant(inci)
    said = [inci if colours else f"{inci}, if it is in for its colour"]
    if rule.listed is None:
        return f"{said[0]}: {rule.of} is not known here"
    listed = {True: f"in {rule.of}", False: f"NOT in {rule.of}", None: f"whether in {rule.of} is not known here"}
    said.append(f"{listed[known.listed[rule.listed]]} ({known.status})")
    if rule.american and known.american:
        said.append(f"its American name is {known.american}: write {known.american.upper()} ({known.number})")
    elif not rule.american and known.number and not is_colourant(inci):
        said.append(f"as a colour it is declared {known.number}")
    return f"{said[0]}: {', '.join(said[1:])}"


def nano_stands(inside: Iterable[tuple[str, MaterialKind]]) -> tuple[str, str]:
    """What is marked (NANO), and what is known here to be sold as a nanomaterial too."""
    names = dict.fromkeys(inci for inci, _ in inside)
    asked = [one for one in names if (known := colour_of(one)) and known.nano and "(NANO)" not in one]
    marked = [one for one in names if "(NANO)" in one]
    if asked:
        words = (
            f"{', '.join(asked)} is sold as a nanomaterial too ({_MEMORY}): ask its supplier, and where it is one write"
        )
        return f"{words} '{asked[0]} (nano)' as its INCI name", "for a person"
    if marked:
        return ", ".join(marked), "found"
    return f"nothing went in that is known here to be sold as a nanomaterial ({_MEMORY})", "found"
