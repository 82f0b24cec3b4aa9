"""How a sample of bars is judged in the United States, as far as NIST Handbook 133 is known here."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.label.packers import PackersFinding, grams, mean_rule, none_below
from ledger.errors import BadInput

_SOURCE = "NIST Handbook 133"
# NIST Handbook 133, packages by weight: up to so many g, the maximum allowable variation in mg. All from memory but
# the 7.2 g of a 113 g package. Which row a shared end belongs to is not known here; the smaller variation is taken.
_VARIATIONS = (
    (54_000, 3_600, "memory"),
    (81_000, 5_400, "memory"),
    (117_000, 7_200, "read for 113 g, the ends of the row from memory"),
    (154_000, 9_000, "memory"),
    (208_000, 10_800, "memory"),
    (263_000, 12_700, "memory"),
    (317_000, 14_500, "memory"),
)
MOST_MG = _VARIATIONS[-1][0]  # what lies above is not known here
_LIGHT_MG, _LIGHT_SHARE = 36_000, Fraction(10, 100)  # under 36 g, 10 % (memory)


class Variation(NamedTuple):
    """How far one package may lie below its declared weight, and whether that was read."""

    mg: int
    status: str


def maximum_allowable_variation(nominal_mg: int) -> Variation:
    """The maximum allowable variation of a package by weight, a percentage cut off to the mg.

    Raises BadInput above 317 g, where the table is not known here.
    """
    if not 0 < nominal_mg <= MOST_MG:
        raise BadInput(f"The allowed variations are known here up to {grams(MOST_MG)}, not for {grams(nominal_mg)}.")
    if nominal_mg < _LIGHT_MG:
        return Variation(int(nominal_mg * _LIGHT_SHARE), "memory")
    return next(Variation(allowed, status) for up_to, allowed, status in _VARIATIONS if nominal_mg <= up_to)


def us_system(nominal_mg: int, weights_mg: Sequence[int]) -> PackersFinding:
    """That the mean is not below the declared weight, and no bar more than the allowed variation (rules from memory).

    Raises BadInput like `maximum_allowable_variation`, or for no weights.
    """
    allowed = maximum_allowable_variation(nominal_mg)
    mean = mean_rule(nominal_mg, weights_mg, _SOURCE, "memory")
    none = none_below(nominal_mg - allowed.mg, weights_mg, _SOURCE, allowed.status)
    basis = (
        f"Checked over the {len(weights_mg)} bars weighed against {_SOURCE} (from memory) for {grams(nominal_mg)} with "
        f"an allowed variation of {grams(allowed.mg)}; the inspectors' test of a whole lot was not made."
    )
    return PackersFinding((mean, none), basis)
