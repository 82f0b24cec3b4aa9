"""The United States, for a bar that is soap and nothing else: no federal list of ingredients is due."""

from fractions import Fraction

from ledger.domain.label.handbook_133 import MOST_MG, us_system
from ledger.domain.label.market import Duty, FigureHeight, Market, Rule
from ledger.domain.label.net_quantity import dual
from ledger.domain.label.packers import System

# 21 CFR 701.20 (what is soap), 16 CFR 500.6-500.21 (net quantity); read in the 2015 edition.
SQUARE_INCH_CM2 = Fraction("6.4516")  # 1 in = 2.54 cm exactly (NIST SP 811, memory)
MARKET = Market(
    code="us-soap",
    address="us",
    name="United States (as soap)",
    countries="US",
    paper="Letter",  # common practice
    declares_ingredients=False,
    ingredients_heading="Ingredients",
    aqua="WATER",
    fragrance_word="FRAGRANCE",
    floats="not more than 1 %",
    net_words=dual,
    packing=(System(us_system, most_mg=MOST_MG),),
    packing_of={},
    best_before_wording="Best before the end of",
    dated_months=None,  # no rule on the durability of soap was found
    # 16 CFR 500.21 (2015 edition, read): panel up to so many square inches, least height in mm as printed there beside
    # 1/16, 1/8, 3/16, 1/4 and 1/2 in. The square inches count; 32.2 and 161 cm² beside them are cut off.
    heights_by="panel",
    figure_heights=(
        FigureHeight(5 * SQUARE_INCH_CM2, 1.5),
        FigureHeight(25 * SQUARE_INCH_CM2, 3.1),
        FigureHeight(100 * SQUARE_INCH_CM2, 4.7),
        FigureHeight(400 * SQUARE_INCH_CM2, 6.35),
        FigureHeight(None, 12.7),
    ),
    allergens=(),
    rules=(
        Rule("responsible person", "name and place of business", "16 CFR 500.5", "from memory, unverified"),
        Rule(
            "net quantity",
            "ounces, then grams, cut off; no qualifying words; bottom 30 % of the display panel",
            "16 CFR 500.6-500.21 (2015 edition)",
            "read",
        ),
        Rule("figure height", "by the area of the principal display panel", "16 CFR 500.21 (2015 edition)", "read"),
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
    unit_prices=(),  # no federal rule was found; states have theirs (from memory)
    serious_effect=Duty(
        says="no duty to report one effect of a bar that is only soap was found; ask before you rest on that",
        to="the Consumer Product Safety Commission (CPSC)",
        source="none found",
        status="from memory, unverified",
    ),
    remains=(
        "Whether it is soap or a cosmetic: only what is labelled, sold and represented as nothing but soap falls "
        "outside 21 CFR 701.3 (21 CFR 701.20).",
        "Whether the bar is an ordinary bar: an ingredient list may be printed all the same.",
    ),
)
