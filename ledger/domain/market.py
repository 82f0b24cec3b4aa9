"""The shape of a market's law on labels: every rule with its source, and what is left to a person."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Rule:
    """One particular of the label: what the law asks, and where that stands."""

    particular: str
    says: str
    source: str
    status: str  # "read", "read in a secondary text", "memory"


@dataclass(frozen=True)
class FigureHeight:
    """The least height of the figures of the net quantity, up to a nominal weight (None: above all others)."""

    up_to_mg: int | None
    millimetres: float


@dataclass(frozen=True)
class Market:
    """What a label for one market carries, and in which words."""

    code: str
    name: str
    ingredients_heading: str
    aqua: str
    net_style: str  # "metric" or "dual" (ounces, then grams)
    best_before_wording: str
    figure_heights: tuple[FigureHeight, ...]
    rules: tuple[Rule, ...]
    remains: tuple[str, ...]  # what this program does not decide

    def figure_height(self, net_mg: int) -> float:
        """The least height of the figures, in mm, for a nominal weight in mg."""
        return next(one.millimetres for one in self.figure_heights if one.up_to_mg is None or net_mg <= one.up_to_mg)
