"""Free alkali of soap as a share of it, as NaOH, from a titre in ethanol; and how a pH was measured."""

import re
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.errors import BadInput
from ledger.units.quantity import parse_number, parse_share

# Grams of NaOH for a litre of acid of 1 mol/L: 40.00, as ISO 456:1973 (ethanol method) reckons it: % = V c 4.000 / m.
_NAOH_PER_MOL = 40
_PROTONS = {"hcl": 1, "h2so4": 2}
_TITRE = re.compile(
    r"(?P<volume>[\d.,]+)\s*ml\s+of\s+(?P<strength>[\d.,]+)\s*(?P<unit>n|m|mol/l)\s+(?P<acid>hcl|h2so4)\s+"
    r"on\s+(?P<mass>[\d.,]+)\s*g\b(?P<rest>.*)",
    re.IGNORECASE,
)
EXAMPLE = "2.1 mL of 0.1 N HCl on 5 g"


class Alkali(NamedTuple):
    """The share of free caustic alkali, as NaOH, in ppm of the soap, and the titre it was reckoned from."""

    ppm: int
    titre: str | None


def free_alkali(typed: str) -> Alkali:
    """A percentage, or a titre such as '2.1 mL of 0.1 N HCl on 5 g': V x c x 4.000 / m, V in mL, c in mol/L, m in g.

    N is the normality, M the moles a litre, of sulphuric acid two each. Raises BadInput for neither, for nothing
    weighed, and for a titre made in water, where the acid goes on into the soap itself and the figure says nothing.
    """
    text = typed.strip()
    figure = text.partition(";")[0].strip()
    found = _TITRE.fullmatch(text)
    if found is None:
        if "ml" in figure.casefold():
            raise BadInput(f"'{text}' is no titre; write it like '{EXAMPLE}', or the percentage: '0.03 %'.")
        return Alkali(parse_share(figure, what="the free alkali"), text.partition(";")[2].strip() or None)
    if "water" in found["rest"].casefold():
        raise BadInput(
            "A titre in water runs on into the soap, so it says nothing of free alkali; titrate in neutral ethanol "
            "(ISO 456)."
        )
    volume, mass = (parse_number(found[key], what=f"the {key}") for key in ("volume", "mass"))
    strength = parse_number(found["strength"], what="the strength of the acid")
    if not mass:
        raise BadInput(f"How much soap was titrated? Write it behind: '{EXAMPLE}'.")
    each = 1 if found["unit"].casefold() == "n" else _PROTONS[found["acid"].casefold()]
    share = Fraction(volume) * Fraction(strength) * each * _NAOH_PER_MOL / 1000 / Fraction(mass)
    if share > 1:
        raise BadInput(f"'{text}' comes to more alkali than soap; look at the figures.")
    return Alkali(round(share * 1_000_000), text)


class Measured(NamedTuple):
    """How a pH was measured, as far as was said: with what, and how much soap was in the water, in ppm."""

    way: Literal["meter", "strip"] | None
    dilution_ppm: int | None


def measured(method: str | None) -> Measured:
    """What is said behind the figure: '1 % in water, meter set at 7 and 10' is a meter at 1 %."""
    words = (method or "").casefold()
    way: Literal["meter", "strip"] | None = "meter" if re.search("meter|electrode", words) else None
    if way is None and re.search("strip|paper", words):
        way = "strip"
    share = re.search(r"(\d+(?:[.,]\d+)?)\s*%", words)
    return Measured(way, parse_share(share[1], what="the dilution") if share else None)
