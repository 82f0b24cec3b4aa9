"""The area of the principal display panel of a label."""

from fractions import Fraction
from typing import Literal

from ledger.errors import BadInput

Shape = Literal["rectangle", "cylinder", "other"]

_UM2_PER_CM2 = 10**8
# 16 CFR 500.6-500.21; 21 CFR 701.13 (read): the share of a cylinder's side, or of any other surface.
_PART = Fraction(40, 100)


def panel_area_cm2(
    shape: Shape, *, height_um: int = 0, across_um: int = 0, surface_cm2: Fraction | int = 0
) -> Fraction:
    """The area of the principal display panel.

    A rectangle is `height_um` by `across_um`; of a cylinder, `across_um` is the circumference, and 40 % of the side
    count; of any other shape, 40 % of `surface_cm2`. Raises BadInput for a measure that is missing.
    """
    if shape == "other":
        area = Fraction(surface_cm2) * _PART
    else:
        side = Fraction(height_um * across_um, _UM2_PER_CM2)
        area = side * _PART if shape == "cylinder" else side
    if area <= 0:
        needed = {
            "rectangle": "height and width",
            "cylinder": "height and circumference",
            "other": "whole surface",
        }[shape]
        raise BadInput(f"The front of the pack cannot be reckoned without its {needed}; measure and write them.")
    return area
