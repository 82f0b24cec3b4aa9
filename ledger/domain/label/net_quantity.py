"""The net quantity as it is printed: in the unit it was decided in, the other derived and cut off, never rounded up."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.domain.recipe.recipe import Recipe
from ledger.errors import BadInput
from ledger.units.quantity import ounces_typed, parse_mass

# 16 CFR 500.8 and 500.9 (2015 edition, read): 1 oz = 28.3495 g and 1 lb = 453.592 g "and none others"; that is 16 oz.
_OUNCE_MG = Fraction("28349.5")
_OUNCES_PER_POUND = 16


class Net(NamedTuple):
    """A net weight as it was decided: in mg, and where it was decided in ounces or pounds, in those exactly."""

    mg: int
    ounces: Fraction | None = None


def read_net(text: str, *, what: str = "the net weight") -> Net:
    """A net weight as typed, in the unit it was typed in. Raises BadInput."""
    return Net(parse_mass(text, what=what), ounces_typed(text, what=what))


def net_of(recipe: Recipe) -> Net | None:
    """The net weight of a recipe, in the unit it was decided in."""
    if not recipe.net_weight_mg:
        return None
    return read_net(recipe.net_weight) if recipe.net_weight else Net(recipe.net_weight_mg)


def _cut(value: Fraction, decimals: int) -> str:
    """The number with at most so many decimals, the rest cut off."""
    scaled = int(value * 10**decimals)
    if not decimals:
        return str(scaled)
    head, tail = divmod(scaled, 10**decimals)
    return f"{head}.{tail:0{decimals}d}".rstrip("0").rstrip(".")


def _figures(value: Fraction, figures: int) -> str:
    """The number with so many figures, the rest cut off; whole numbers keep all of theirs."""
    return _cut(value, max(figures - len(str(int(value))), 0))


def metric(net: Net) -> str:
    """Grams, whole where they are: 100 g, 99.5 g; decided in ounces, what they come to, cut off: 3.5 oz is 99.2 g."""
    return f"{_cut(_grams(net), 1)} g"


def _grams(net: Net) -> Fraction:
    return Fraction(net.mg, 1000) if net.ounces is None else net.ounces * _OUNCE_MG / 1000


def dual(net: Net, *, figures: Literal[2, 3] = 3) -> str:
    """Ounces (pounds from one pound up) to two decimals with the metric weight behind, both cut off.

    16 CFR 500.6-500.9 and 500.19 (read, 2015 edition). What was decided in ounces stands as decided, and the metric
    weight follows from it by the factor printed there. The metric weight has three figures; below 100 g two
    are allowed: 70.8 g or 70 g. From 1000 g up it is given in kilograms (memory).
    """
    ounces = Fraction(net.mg) / _OUNCE_MG if net.ounces is None else net.ounces
    in_pounds = ounces >= _OUNCES_PER_POUND
    customary = f"{_cut(ounces / _OUNCES_PER_POUND if in_pounds else ounces, 2)} {'lb' if in_pounds else 'oz'}"
    grams = _grams(net)
    if grams >= 1000:
        return f"Net Wt {customary} ({_figures(grams / 1000, 3)} kg)"
    return f"Net Wt {customary} ({_figures(grams, figures if grams < 100 else 3)} g)"


def own_weights(weights: Sequence[Net], words: Callable[[Net], str]) -> list[str]:
    """What each bar says that is labelled with its own weight, in the order weighed. Raises BadInput for no weight."""
    if any(one.mg <= 0 for one in weights):
        raise BadInput("A bar without a weight cannot be labelled with it; weigh it again.")
    return [words(one) for one in weights]
