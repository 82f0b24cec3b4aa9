"""The shape of a market's law on labels: every rule with its dates and its source, and what is left to a person."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.domain.label.declaration import Floats
from ledger.domain.label.net_quantity import Net
from ledger.domain.label.packers import System


class Rule(NamedTuple):
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


class AllergenList(NamedTuple):
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
    limits: str | None = None  # where the maxima and purities of its entries hold in this market, and how that is known


class FigureHeight(NamedTuple):
    """The least height of the figures of the net quantity, up to a weight in mg or a panel in cm2 (None: above all)."""

    up_to: int | Fraction | None
    millimetres: float | Fraction


OVER = 1.05  # a house rule: what a law sets is drawn so much higher, since printers "fit to page"


@dataclass(frozen=True)
class Lettering:
    """How the net quantity is set, and the least height of other letters, in mm (0: none is named)."""

    measured: Literal["figures", "letters"] = "figures"  # letters: the small o where small ones stand, else capitals
    bold: bool = False
    clear: bool = False  # a letter's height above and below, twice the width of an N at both sides
    lowest: float = 0.0  # the share of the label's front, from its foot, that it stands in; 0: anywhere
    freed_cm2: float = 0.0  # up to which area of the front it may stand anywhere all the same
    others_mm: float = 0.0  # of what it is, who answers for it, cautions, origin and ingredients
    ingredients_mm: float = 0.0
    drawn: float = 1.0  # how much higher than the least it is drawn

    def on(self, front_cm2: Fraction | None) -> "Lettering":
        """The same for a front of so many cm2."""
        freed = front_cm2 is not None and front_cm2 <= self.freed_cm2
        return replace(self, lowest=0.0) if freed else self


AS_FIGURES = Lettering()  # by its figures alone, as labels were set before 28 Nov 2026


class UnitPrice(NamedTuple):
    """How the price of a kilogram is rounded and shown on a price ticket, and what is left open."""

    show: Callable[[int, int, Callable[[int], str]], str]  # a price in minor units, a net weight in mg, how to say it
    remains: tuple[str, ...]
    within: str | None = None  # a part of the market that has a rule of its own
    currency: str | None = None  # the only one it speaks of; None: that of the ledger
    asked: bool = True  # False: no rule asks for it, and it stands where she wants it


class Duty(NamedTuple):
    """What is due when an effect is serious: what to do, whom to turn to, and where that stands."""

    says: str
    to: str
    source: str
    status: str


class ColourRule(NamedTuple):
    """Which list of colours holds in a market, and whether a colour goes by its American name or its number there."""

    listed: Literal["annex_iv", "us"] | None  # None: which colours are permitted there was not looked up
    of: str  # the list, in words
    american: bool


class Market(NamedTuple):
    """What a label for one market carries, and in which words; what is empty or None is not asked, or not known here.

    The rules themselves are in `domain`; a market names those that apply to it, each with its source.
    """

    code: str
    address: str  # which responsible person: eu, gb, us, ca
    name: str
    countries: str  # ISO 3166, a space between; whose makers are at home in it
    seats: str  # the same, of addresses that serve it for its responsible person; XI is Northern Ireland
    paper: Literal["A4", "Letter"]  # what is sold for printers there
    declares_ingredients: bool
    ingredients_heading: str
    aqua: str
    fragrance_word: str  # where the recipe keeps fragrance together
    floats: Floats  # which ingredients may follow in any order
    net_words: Callable[[Net], str]  # a net weight as it is printed
    packing: tuple[System, ...]  # by any of which weights at packing may be judged
    packing_of: Mapping[str, tuple[System, ...]]  # in place of those, for packers of some countries
    dated_months: int | None  # up to how many months a date stands, and above the period after opening; None: a date
    figure_heights: tuple[FigureHeight, ...]  # from the lowest up
    heights_by: Literal["weight", "panel"]
    allergens: tuple[AllergenList, ...]
    colours: ColourRule | None  # None: no rule on them is known here
    rules: tuple[Rule, ...]
    elsewhere: Mapping[str, str]  # what may stand apart from a bar that is too small for it: where, and by which law
    unit_prices: tuple[UnitPrice, ...]
    serious_effect: Duty
    remains: tuple[str, ...]  # what this program does not decide
    lettering: Lettering = Lettering(drawn=OVER)
    not_on_tag: tuple[str, ...] = ()  # which fields of a layout never stand on a tag alone
    tag_source: str = ""  # where that stands, and how it is known
    without_label: str = "what a notice may stand for is not known here"  # beside bars that are sold without one
    languages: Mapping[str, str] = {}  # by country, "" for any other: "de", "en fr"

    def asks(self, particular: str, on: date) -> bool:
        """Whether a rule of that name is in force on a day."""
        return any(rule.particular == particular and rule.holds(on) for rule in self.rules)

    def languages_in(self, country: str) -> str:
        """The languages of the words of a label for a country of it; empty where none is known here."""
        return self.languages.get(country) or self.languages.get("", "")

    def packers_rules(self, country: str) -> tuple[System, ...]:
        """How the weights of a packer in a country are judged."""
        return self.packing_of.get(country, self.packing)

    def unit_price(self, within: str | None = None) -> UnitPrice | None:
        """The rule on unit prices, or that of one part of the market; None where none is known here."""
        return next((one for one in self.unit_prices if one.within == within), None)

    def figure_height(self, net_mg: int, panel_cm2: Fraction | None = None) -> float | None:
        """The least height of the figures, in mm, by nominal weight in mg or by panel; None while it is not known."""
        size = net_mg if self.heights_by == "weight" else panel_cm2
        fitting = (one.millimetres for one in self.figure_heights if one.up_to is None or (size or 0) <= one.up_to)
        found = None if size is None else next(fitting, None)
        return None if found is None else float(found)

    def allergen_list(self, first_supplied: date) -> AllergenList | None:
        """The list for bars first supplied on a day; None where the market asks for none."""
        for one in self.allergens:
            if (one.since is None or one.since <= first_supplied) and (
                one.until is None or first_supplied <= one.until
            ):
                return one
        return None
