"""The European Union, and Northern Ireland, where the same regulation applies."""

from collections.abc import Mapping
from datetime import date
from functools import partial

from ledger.domain.label.market import AllergenList, ColourRule, Duty, FigureHeight, Market, Rule, UnitPrice
from ledger.domain.label.net_quantity import metric
from ledger.domain.label.packers import LEAST_MG, MOST_MG, Few, System, average_system
from ledger.domain.label.unit_price import show_per_kilogram, show_per_kilogram_ni

# Regulation (EU) 2023/1545 amending Annex III: products on the earlier list may be placed on the market until
# 31 July 2026 and made available until 31 July 2028 (read in a secondary text); counted per bar, when it is first
# supplied (from memory, unverified). Rinse-off threshold 0.01 %, exceeded (read).
LAST_DAY_OF_THE_FIRST_LIST = date(2026, 7, 31)
SOLD_ON_UNTIL = date(2028, 7, 31)
BANS = "Annex II to Regulation (EC) 1223/2009"  # HICC, Lilial, atranols, three oils: read in a secondary text
LIMITS = "Annex III to Regulation (EC) 1223/2009"  # its maxima and purities: read in a secondary text
FIRST_LIST = AllergenList(
    name="the first list (24 names)",
    names="first",
    threshold_ppm=100,
    source="Annex III to Regulation (EC) 1223/2009 before Regulation (EU) 2023/1545",
    status="read",
    until=LAST_DAY_OF_THE_FIRST_LIST,
    sold_on_until=SOLD_ON_UNTIL,
    bans=BANS,
    limits=LIMITS,
)
LONG_LIST = AllergenList(
    name="the long list (81 names)",
    names="long",
    threshold_ppm=100,
    source="Annex III to Regulation (EC) 1223/2009 as amended by Regulation (EU) 2023/1545",
    status="read; dates read in a secondary text",
    since=date(2026, 8, 1),
    bans=BANS,
    limits=LIMITS,
)

# Directive 76/211/EEC asks for "sufficiently small" a share, and leaves the figure to the tests of its annex II.
FEW = Few(25_000, "European Union", "Directive 76/211/EEC, annex II, as it is read", "from memory, unverified")
FEW_DE = Few(20_000, "Germany", "the packers' rules there, the instrument not noted", "read")


def average(few: Few, source: str = "Directive 76/211/EEC") -> System:
    """The average system of Directive 76/211/EEC (read), with a country's own share of light bars and instrument."""
    return System(partial(average_system, few=few, source=source), LEAST_MG, MOST_MG)


UNIT_PRICE_REMAINS = (
    "How a unit price is rounded in Great Britain and the European Union was not found: it is rounded half up to the "
    "smallest coin, and in Northern Ireland so from one pound up.",
    "Small and itinerant traders may be exempt, by country (Directive 98/6/EC, read).",
)
# Regulation (EC) 1223/2009, Article 19(1)(e), (2) and (3); from memory, unverified.
_LAW = "of Regulation (EC) 1223/2009, from memory"
_APART = "with the bar, and the hand-with-book mark (field 'leaflet') points to it"
# Art 19(5): the Danish, Swedish, Italian, Slovak and Dutch authorities ask for their own (read in a secondary text).
_READ = {"DK": "da", "SE": "sv", "IT": "it", "SK": "sk", "NL": "nl"}
# From memory, unverified; GB is Northern Ireland here.
_MEMORY = {
    "AT": "de", "CZ": "cs", "DE": "de", "ES": "es", "FI": "fi", "FR": "fr", "GB": "en", "GR": "el", "HU": "hu",
    "IE": "en", "PL": "pl", "PT": "pt", "RO": "ro",
}  # fmt: skip


def _listed(languages: Mapping[str, str]) -> str:
    return ", ".join(f"{country} {language}" for country, language in languages.items())


_COUNTRIES = "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK"  # from memory

MARKET = Market(
    code="eu",
    address="eu",
    name="European Union and Northern Ireland",
    countries=_COUNTRIES,
    seats=f"{_COUNTRIES} XI",  # an address in Northern Ireland serves both (read in a secondary text)
    paper="A4",  # ISO 216, common practice
    declares_ingredients=True,
    ingredients_heading="Ingredients",
    aqua="AQUA",
    fragrance_word="PARFUM",
    floats="below 1 %",  # Art 19(1)(g), from memory, unverified
    net_words=metric,
    packing=(average(FEW),),
    packing_of={"DE": (average(FEW_DE),)},
    # Art 19(1)(c) (read): the date is not mandatory above 30 months; that a period after opening takes its place (read
    # in a secondary text)
    dated_months=30,
    # Directive 76/211/EEC, annex I (read)
    heights_by="weight",
    figure_heights=(
        FigureHeight(50_000, 2),
        FigureHeight(200_000, 3),
        FigureHeight(1_000_000, 4),
        FigureHeight(None, 6),
    ),
    allergens=(FIRST_LIST, LONG_LIST),
    languages={**_READ, **_MEMORY},
    colours=ColourRule("annex_iv", "Annex IV to Regulation (EC) 1223/2009", american=False),
    rules=(
        Rule(
            "language",
            "content, date, precautions and function in the language that the country of sale asks for: "
            f"{_listed(_READ)} (each by its authority, read in a secondary text); {_listed(_MEMORY)} (from memory, "
            "unverified); any other is to be asked",
            "Art 19(5)",
            "read in a secondary text",
        ),
        Rule(
            "responsible person",
            "name and address of one established in the Union or Northern Ireland",
            "Regulation (EC) 1223/2009, Art 4 and 19(1)(a)",
            "name and address read in a secondary text, the rest from memory",
        ),
        Rule("net quantity", "nominal content at the time of packaging", "Art 19(1)(b)", "read"),
        Rule("figure height", "2, 3, 4 or 6 mm by nominal quantity", "Directive 76/211/EEC, annex I", "read"),
        Rule(
            "durability",
            "best used before the end of month and year; above 30 months no date, and the period after opening unless "
            "opening does not matter",
            "Art 19(1)(c)",
            "first half read, rest read in a secondary text",
        ),
        Rule("precautions", "at least those of Annexes III to VI", "Art 19(1)(d)", "read in a secondary text"),
        Rule("batch code", "batch number or reference", "Art 19(1)(e)", "read in a secondary text"),
        Rule("function", "unless clear from the presentation", "Art 19(1)(f)", "read in a secondary text"),
        Rule(
            "ingredients",
            "headed 'ingredients', by weight at the time of addition; below 1 % in any order after "
            "the rest; colourants last, by CI number",
            "Art 19(1)(g)",
            "order read in a secondary text, 1 % from memory",
        ),
        Rule(
            "colours", "those of Annex IV alone, by CI number", "Art 14(1)(c) and 19(1)(g)", "from memory, unverified"
        ),
        Rule("nanomaterials", "(nano) behind the name", "Art 19(1)(g)", "from memory, unverified"),
        Rule(
            "may contain",
            "'may contain' or +/- only for the colours of a range of shades",
            "Art 19(1)(g)",
            "from memory, unverified",
        ),
        Rule("allergens", "each that exceeds 0.01 % in a rinse-off product, by its label name", "Annex III", "read"),
        Rule("origin", "country of origin, if imported", "Art 19(1)(a)", "read in a secondary text"),
        Rule("assessment", "a safety assessment before a bar is supplied", "Art 10 and 11", "read in a secondary text"),
        Rule("notification", "a notification before a bar is supplied", "Art 13", "read in a secondary text"),
    ),
    elsewhere={
        "ingredients": "Where no label is large enough, the list may stand on a tag, card or leaflet that goes "
        f"{_APART}; for soap also on a notice beside it (--layout notice-shelf): Art 19(2) and (3) {_LAW}.",
        "precautions": "Where no label is large enough, they may stand on a leaflet, tag or card that goes "
        f"{_APART}: Art 19(2) {_LAW}.",
        "batch_code": "Where the bar is too small, the batch code may stand on the outer packaging alone: "
        f"Art 19(1)(e) {_LAW}.",
    },
    # Art 19(2) lets precautions and ingredients go onto a tag, and nothing else
    not_on_tag=("responsible", "best_before", "after_opening"),
    tag_source="Art 19(2), read in a secondary text",
    without_label="a notice right beside the bars may stand for the list of ingredients alone (Art 19(3) "
    f"{_LAW}); for bars that are not pre-packed or are packed on request each country has its own rules (Art 19(4), "
    "read in a secondary text: in Germany a label, tag or card with the particulars, KosmetikV § 5)",
    unit_prices=(
        # Directive 98/6/EC (read): per kilogram, taxes included, where it differs from the price
        UnitPrice(show_per_kilogram, UNIT_PRICE_REMAINS),
        # SR 2004/368 article 13 (read): below one pound to the nearest tenth of a penny, a half up
        UnitPrice(show_per_kilogram_ni, UNIT_PRICE_REMAINS, within="Northern Ireland", currency="GBP"),
    ),
    serious_effect=Duty(
        says="report a serious undesirable effect without delay",
        # in Northern Ireland the same regulation applies; which office there takes it is from memory, unverified
        to="the competent authority of the Member State where it happened; in Northern Ireland the Office for Product "
        "Safety and Standards (OPSS)",
        source="Regulation (EC) 1223/2009, Art 23",
        status="read in a secondary text; the office in Northern Ireland from memory, unverified",
    ),
    remains=(
        "What the safety assessor says: this compares figures, and assesses nothing (Art 10).",
        "Whether bars on sale or return have been supplied: that day decides which list of allergens applies.",
    ),
)
