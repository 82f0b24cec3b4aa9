"""The shape of a market's law on labels: every rule with its dates and its source, and what is left to a person."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class Rule:
    """One particular of the label: what the law asks, where that stands, and from when until when."""

    particular: str
    says: str
    source: str
    status: str  # "read", "read in a secondary text", "from memory, unverified"
    since: date | None = None
    until: date | None = None

    def holds(self, on: date) -> bool:
        """Whether it is in force on a day."""
        return (self.since is None or self.since <= on) and (self.until is None or on <= self.until)


@dataclass(frozen=True)
class AllergenList:
    """A list of fragrance allergens: which names, for bars first supplied when, and how long those may be sold on."""

    name: str
    names: str  # "first": the 24 of the first 26 that are still allowed; "long": all 81
    threshold_ppm: int
    source: str
    status: str
    since: date | None = None  # for bars first supplied from that day
    until: date | None = None  # for bars first supplied up to that day
    sold_on_until: date | None = None  # bars in a shop's hands by `until` may be sold so long
    bans: str | None = None  # where what Annex II names is prohibited in this market, and how that is known


@dataclass(frozen=True)
class FigureHeight:
    """The least height of the figures of the net quantity, up to a nominal weight (None: above all others)."""

    up_to_mg: int | None
    millimetres: float


@dataclass(frozen=True)
class Duty:
    """What is due when an effect is serious: what to do, whom to turn to, and where that stands."""

    says: str
    to: str
    source: str
    status: str


@dataclass(frozen=True)
class Market:
    """What a label for one market carries, and in which words."""

    code: str
    address: str  # which responsible person: eu, gb, us, ca
    name: str
    declares_ingredients: bool
    ingredients_heading: str
    aqua: str
    fragrance_word: str  # where the recipe keeps fragrance together
    floats: str  # which ingredients may follow in any order: "below 1 %" or "not more than 1 %"
    net_style: str  # "metric" or "dual" (ounces, then grams)
    net_system: str  # "average", "average or minimum", "net", for packing weights
    best_before_wording: str
    figure_heights: tuple[FigureHeight, ...]  # empty: by the area of the display panel
    needs_assessment: bool  # before a bar is supplied, gifts included
    allergens: tuple[AllergenList, ...]
    rules: tuple[Rule, ...]
    serious_effect: Duty
    remains: tuple[str, ...]  # what this program does not decide

    def figure_height(self, net_mg: int) -> float | None:
        """The least height of the figures, in mm, for a nominal weight in mg; None where the panel decides."""
        found = (one.millimetres for one in self.figure_heights if one.up_to_mg is None or net_mg <= one.up_to_mg)
        return next(found, None)

    def allergen_list(self, first_supplied: date) -> AllergenList | None:
        """The list for bars first supplied on a day; None where the market asks for none."""
        for one in self.allergens:
            if (one.since is None or one.since <= first_supplied) and (
                one.until is None or first_supplied <= one.until
            ):
                return one
        return None
