"""The United States, for a bar that is soap and nothing else: no federal list of ingredients is due."""

from fractions import Fraction

from ledger.domain.label.handbook_133 import MOST_MG, us_system
from ledger.domain.label.market import OVER, Duty, FigureHeight, Lettering, Market, Rule, UnitPrice
from ledger.domain.label.net_quantity import dual
from ledger.domain.label.packers import System
from ledger.domain.label.unit_price import show_per_pound

# 21 CFR 701.20 (what is soap), 16 CFR 500.6-500.21 (net quantity); read in the 2015 edition.
INCH_MM = Fraction("25.4")  # exactly (NIST SP 811, memory)
SQUARE_INCH_CM2 = (INCH_MM / 10) ** 2
_POUND = "No federal rule on the price of a pound was found; whether your state asks for it is for you to look up."
STAMPED = (
    "Figures stamped or moulded into the bar or its box stand 1/16 in higher than printed ones (16 CFR 500.21, 21 CFR "
    "701.13(i); from memory, unverified); no such figures are drawn or measured here."
)
UNDATED = Rule(
    "durability",
    "no date is asked for, as far as is known here; one that is printed all the same is to be true",
    "none found",
    "from memory, unverified",
)
MARKET = Market(
    code="us-soap",
    address="us",
    name="United States (as soap)",
    countries="US",
    seats="US",
    paper="Letter",  # common practice
    declares_ingredients=False,
    ingredients_heading="Ingredients",
    aqua="WATER",
    fragrance_word="FRAGRANCE",
    floats="not more than 1 %",
    net_words=dual,
    packing=(System(us_system, most_mg=MOST_MG),),
    packing_of={},
    dated_months=None,  # no rule on the durability of soap was found
    # 16 CFR 500.21(b), 21 CFR 701.13(i) (2015 edition, read): so many square inches, least height in inches.
    # The inches count; 1.5, 3.1 and 4.7 mm, 32.2 and 161 cm² beside them are cut off.
    heights_by="panel",
    figure_heights=(
        FigureHeight(5 * SQUARE_INCH_CM2, INCH_MM / 16),
        FigureHeight(25 * SQUARE_INCH_CM2, INCH_MM / 8),
        FigureHeight(100 * SQUARE_INCH_CM2, INCH_MM * 3 / 16),
        FigureHeight(400 * SQUARE_INCH_CM2, INCH_MM / 4),
        FigureHeight(None, INCH_MM / 2),
    ),
    # Bold: 16 CFR 500.20 (read). The small letter o where small letters stand, else capitals: 21 CFR 701.13(h); clear
    # space, lowest 30 % of the label's panel, from which a panel of 5 square inches or less is freed: 701.13(f) (all
    # from memory, unverified).
    lettering=Lettering("letters", bold=True, clear=True, lowest=0.3, freed_cm2=float(5 * SQUARE_INCH_CM2), drawn=OVER),
    allergens=(),
    languages={"": "en"},
    colours=None,  # the listing of colour additives binds cosmetics, not soap (from memory)
    rules=(
        Rule("language", "English throughout", "21 CFR 701.2(b)", "from memory, unverified"),
        Rule("responsible person", "name and place of business", "16 CFR 500.5", "from memory, unverified"),
        Rule(
            "net quantity",
            "ounces, then grams, cut off; no qualifying words",
            "16 CFR 500.6-500.21 (2015 edition)",
            "read",
        ),
        Rule(
            "figure height",
            "bold, by the area of the side that bears the front, measured by the small letter o wherever small letters "
            "stand; clear space round it, and in the lowest 30 % of a front over 5 sq in",
            "16 CFR 500.20 and 500.21 (2015 edition); 21 CFR 701.13(f), (h)",
            "read; the letter measured, the clear space and the 30 % from memory, unverified",
        ),
        UNDATED,
        Rule(
            "voluntary ingredients",
            "no list is asked for; one that is given all the same is given whole and true",
            "none found",
            "from memory, unverified",
        ),
        Rule(
            "origin",
            "the English name of the country of origin, if imported",
            "19 USC 1304",
            "read in a secondary text",
        ),
        Rule("function", "statement of identity", "16 CFR 500.4", "from memory, unverified"),
        Rule(
            "only soap",
            "labelled, sold and represented only as soap; the bulk of its non-volatile matter an alkali "
            "salt of fatty acids",
            "21 CFR 701.20 (2015 edition)",
            "read",
        ),
    ),
    elsewhere={},
    # no federal rule was found; states have theirs, by the pound (from memory, unverified)
    unit_prices=(UnitPrice(show_per_pound, (_POUND,), asked=False),),
    serious_effect=Duty(
        says="no duty to report one effect of a bar that is only soap was found; ask before you rest on that",
        to="the Consumer Product Safety Commission (CPSC)",
        source="none found",
        status="from memory, unverified",
    ),
    remains=(
        "Whether it is soap or a cosmetic: only what is labelled, sold and represented as nothing but soap falls "
        "outside 21 CFR 701.3 (21 CFR 701.20).",
        STAMPED,
        "Whether an ingredient list is printed all the same: list_ingredients = true under [label] in the recipe.",
    ),
)
