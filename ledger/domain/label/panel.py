"""The side of the pack that bears the front of a label, by whose area a law sets the height of the figures."""

from fractions import Fraction
from math import pi
from typing import Literal, NamedTuple

from ledger.errors import BadInput
from ledger.units.quantity import parse_length, parse_number

Shape = Literal["rectangle", "cylinder", "top", "other"]

_UM2_PER_CM2 = 10**8
# 16 CFR 500.21(a)(1)-(3) (read): a side is its height by its width, without tops, bottoms, flanges, shoulders and
# necks; of a cylinder's side, and of the whole surface of any other shape, 40 % count; but of a round, oval or
# triangular pack with an obvious front its entire top.
_PART = Fraction(40, 100)
_TOP = Fraction(pi) / 4  # of the square round a circle, of the rectangle round an oval
_SHAPES: dict[str, Shape] = {"cylinder": "cylinder", "round": "top", "oval": "top"}
_SURFACE = "surface"
_CM2 = {"cm2": Fraction(1), "cm²": Fraction(1), "sq in": Fraction("6.4516"), "in2": Fraction("6.4516")}
EXAMPLES = "'55 x 80 mm', 'round 60 mm', 'oval 50 x 70 mm', 'cylinder 3 x 8 in', or for any other 'surface 120 cm2'"


class Front(NamedTuple):
    """The side of the pack that bears the front: in words as they were given, and its area."""

    words: str
    cm2: Fraction


def panel_area_cm2(
    shape: Shape, *, height_um: int = 0, across_um: int = 0, surface_cm2: Fraction | int = 0
) -> Fraction:
    """The area of the principal display panel.

    A rectangle is `height_um` by `across_um`; of a cylinder, `across_um` is the circumference, and 40 % of the side
    count; of a round or oval top, the two are its diameters; of any other shape, 40 % of `surface_cm2`. Raises
    BadInput for a measure that is missing.
    """
    if shape == "other":
        area = Fraction(surface_cm2) * _PART
    else:
        area = Fraction(height_um * across_um, _UM2_PER_CM2) * {"cylinder": _PART, "top": _TOP}.get(shape, 1)
    if area <= 0:
        needed = {
            "rectangle": "height and width",
            "cylinder": "height and circumference",
            "top": "two diameters",
            "other": "whole surface",
        }[shape]
        raise BadInput(f"The front of the pack cannot be reckoned without its {needed}; measure and write them.")
    return area


def read_front(text: str) -> Front:
    """The side of the pack that bears the front, as typed or as a layout says it. Raises BadInput."""
    plain = " ".join(text.replace("×", "x").split())
    first, _, rest = plain.partition(" ")
    if first == _SURFACE:
        return Front(plain, panel_area_cm2("other", surface_cm2=_surface(rest, text)))
    shape = _SHAPES.get(first, "rectangle")
    sizes = [one.strip() for one in (rest if first in _SHAPES else plain).split("x")]
    if first == "round" and len(sizes) == 1:
        sizes *= 2
    if len(sizes) != 2 or not sizes[1][-1:].isalpha():
        raise _unread(text)
    unit = "".join(sign for sign in sizes[1] if sign.isalpha())
    high, across = (parse_length(one if one[-1:].isalpha() else f"{one} {unit}", what="the pack") for one in sizes)
    return Front(plain, panel_area_cm2(shape, height_um=high, across_um=across))


def _surface(rest: str, text: str) -> Fraction:
    unit = next((one for one in _CM2 if rest.endswith(one)), None)
    if unit is None:
        raise _unread(text)
    return parse_number(rest.removesuffix(unit), what="the surface") * _CM2[unit]


def _unread(text: str) -> BadInput:
    return BadInput(f"'{text}' is no side of a pack; write its height and width, {EXAMPLES}.")
