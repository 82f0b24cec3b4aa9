"""How much fat fills a mould, makes so many bars, or uses up what is there: everything scales with the fats."""

from fractions import Fraction
from typing import NamedTuple

from ledger.domain.recipe.mould import Mould
from ledger.errors import BadInput

# Fresh dough, by its parts: fats 0.942 g per mL, water 1.000, alkali dissolved in water 0.21 mL per g, anything
# else 1.000. Chosen so that dough at water 2 : 1 NaOH has the 1.03 g per mL that common practice gives (no source);
# the volume of dissolved alkali is that of lye of 33 % at 1.36 g per mL (from memory, unverified).
_FATS_ML_PER_G = 1 / Fraction("0.942")
_ALKALI_ML_PER_G = Fraction("0.21")


class Dough(NamedTuple):
    """Fresh dough by its parts, in mg."""

    fats_mg: int
    alkali_mg: int
    water_mg: int
    others_mg: int

    @property
    def mass_mg(self) -> int:
        """The whole."""
        return self.fats_mg + self.alkali_mg + self.water_mg + self.others_mg

    def volume_ul(self, density_mg_per_ml: int | None = None) -> int:
        """Its volume in microlitres, from its parts, or at the density that her own batches gave."""
        if density_mg_per_ml is not None:
            return round(Fraction(self.mass_mg * 1000, density_mg_per_ml))
        return round(self.fats_mg * _FATS_ML_PER_G + self.alkali_mg * _ALKALI_ML_PER_G + self.water_mg + self.others_mg)


def fats_for_volume(dough: Dough, volume_ul: int, *, density_mg_per_ml: int | None = None) -> int:
    """The fats, in mg, of which the same dough fills so many microlitres."""
    return round(Fraction(dough.fats_mg * volume_ul, dough.volume_ul(density_mg_per_ml)))


def fats_for_bars(dough: Dough, cured_mg: int, *, bars: int, net_weight_mg: int) -> int:
    """The fats, in mg, for so many bars that weigh so much after the cure; `cured_mg` is what the dough then weighs.

    Raises BadInput for no bars.
    """
    if bars <= 0 or net_weight_mg <= 0:
        raise BadInput("How many bars, and of what weight? Write --bars 12 --net-weight '100 g'.")
    return round(Fraction(dough.fats_mg * bars * net_weight_mg, cured_mg))


def fats_for_stock(fats_mg: int, of_it_mg: int, free_mg: int) -> int:
    """The fats, in mg, that use up what is free of one of them. Rounded down, so that it never asks for more."""
    return fats_mg * free_mg // of_it_mg


def bars_of(mould: Mould, bars: int) -> int:
    """The volume of so many bars of a size, in microlitres. Raises BadInput for no bars."""
    if bars <= 0:
        raise BadInput("How many bars? Write a number above zero, such as --bars 12.")
    return mould.volume_ul * bars
