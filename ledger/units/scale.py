"""What her scale reads, and what of a window it can show."""

from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from ledger.units.measures import MASS_MG, scale_unit
from ledger.units.quantity import SCALE_STEP_MG
from ledger.units.words import Units


class Scale(NamedTuple):
    """What a weight can be read as: the smallest step of the scale in mg, and the units it is shown in."""

    step_mg: int = SCALE_STEP_MG
    units: Units = "metric"

    def inside(self, low: int, high: int, target: int) -> tuple[int, int]:
        """The ends of a window in mg, moved in to weights that the scale reads and that are shown to their last place.

        Else a weight that reads as an end could lie beyond it. What the target reads as stays inside.
        """
        if scale_unit(self.units) == "oz":
            shown = MASS_MG["oz"] / 100
        else:
            shown = Fraction(100 if target >= 10_000 else 10)
        grid = max(Fraction(self.step_mg), shown)
        read = round(Fraction(target) / grid)
        least, most = min(ceil(low / grid), read), max(floor(high / grid), read)
        return round(least * grid), round(most * grid)
