"""The United States, for a bar that is soap and nothing else: no federal list of ingredients is due."""

from ledger.domain.market import Duty, Market, Rule

# 21 CFR 701.20 (what is soap), 16 CFR 500.6-500.21 (net quantity); read in the 2015 edition.
MARKET = Market(
    code="us-soap",
    address="us",
    name="United States (as soap)",
    declares_ingredients=False,
    ingredients_heading="Ingredients",
    aqua="WATER",
    fragrance_word="FRAGRANCE",
    floats="not more than 1 %",
    net_style="dual",
    net_system="net",
    best_before_wording="Best before the end of",
    figure_heights=(),  # by the area of the display panel: 16 CFR 500.21
    needs_assessment=False,
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
