"""The limits that a recipe sets, and what is usual where it sets none."""

from typing import NamedTuple

from ledger.units.measures import degree_unit
from ledger.units.words import Units

# 8-10 is often quoted, true soap in 1 % solution reads about 9-10.5; common practice, no source.
PH_AT_MOST, PH_TO_QUESTION = 10_500, 9_000
FREE_ALKALI_PPM = 500  # free caustic alkali of a toilet soap, as NaOH: IS 2888:2004, from memory, unverified
# In round figures of the ledger's own degrees, each common practice, no source.
APART_MILLI_C = {"°C": 5_000, "°F": 5_556}  # lye and fats before mixing: within 5 °C, or 10 °F
FRAGRANCE_MILLI_C = {"°C": 80_000, "°F": 79_444}  # into cooked soap at 80 °C at the most, or 175 °F
# Mass in less all that was weighed out, the water lost in the cook apart; the maker's own until she writes another.
LOSS_PPM = {"cold": 100_000, "hot": 150_000, "rebatch": 200_000}


class Limits(NamedTuple):
    """What a recipe version allows; None: it sets no limit. Temperatures in thousandths of a degree Celsius."""

    apart_milli_c: int | None = None  # None: the usual one of the ledger's unit, as for the fragrance
    lye_milli_c: int | None = None
    cook_minutes: tuple[int, int] | None = None
    fragrance_milli_c: int | None = None
    bar_weight_mg: tuple[int, int] | None = None
    ph_thousandths: int = PH_AT_MOST
    loss_ppm: int = LOSS_PPM["cold"]
    ph_least_thousandths: int | None = None
    lye_least_milli_c: int | None = None
    fragrance_least_milli_c: int | None = None

    @property
    def ph(self) -> tuple[int, int]:
        """Between what a pH lies, in thousandths; from nothing where no low limit is set."""
        return self.ph_least_thousandths or 0, self.ph_thousandths

    def apart(self, units: Units) -> int:
        """How far lye and fats may be apart before they are mixed."""
        return APART_MILLI_C[degree_unit(units)] if self.apart_milli_c is None else self.apart_milli_c

    def fragrance(self, units: Units) -> int:
        """How warm cooked soap may be when the fragrance goes in."""
        return FRAGRANCE_MILLI_C[degree_unit(units)] if self.fragrance_milli_c is None else self.fragrance_milli_c
