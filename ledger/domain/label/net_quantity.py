"""The net quantity as it is printed; conversions are cut off, never rounded up."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Literal

from ledger.errors import BadInput

# 16 CFR 500.8 and 500.9 (2015 edition, read): 1 oz = 28.3495 g and 1 lb = 453.592 g "and none others".
_US_MG = {"oz": Fraction("28349.5"), "lb": Fraction(453_592)}


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


def metric(net_mg: int) -> str:
    """Grams, whole where they are: 100 g, 99.5 g."""
    return f"{_cut(Fraction(net_mg, 1000), 1)} g"


def dual(net_mg: int | Fraction, *, figures: Literal[2, 3] = 3) -> str:
    """Ounces (pounds from one pound up) to two decimals with the metric weight behind, both cut off.

    16 CFR 500.6-500.9 and 500.19 (read, 2015 edition). The metric weight has three figures; below 100 g two
    are allowed: 70.8 g or 70 g. From 1000 g up it is given in kilograms (memory).
    """
    net = Fraction(net_mg)
    unit = "lb" if net >= _US_MG["lb"] else "oz"
    customary = f"{_cut(net / _US_MG[unit], 2)} {unit}"
    if net >= 1_000_000:
        return f"Net Wt {customary} ({_figures(net / 1_000_000, 3)} kg)"
    return f"Net Wt {customary} ({_figures(net / 1000, figures if net < 100_000 else 3)} g)"


def own_weights(weights_mg: Sequence[int], words: Callable[[int], str]) -> list[str]:
    """What each bar says that is labelled with its own weight, in the order weighed. Raises BadInput for no weight."""
    if any(weight <= 0 for weight in weights_mg):
        raise BadInput("A bar without a weight cannot be labelled with it; weigh it again.")
    return [words(weight) for weight in weights_mg]
