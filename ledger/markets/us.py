"""The United States, where soap sold only as soap needs no federal list of ingredients."""

from ledger.domain.market import FigureHeight, Market, Rule

# 21 CFR 701.20 (what is soap), 16 CFR 500.6-500.21 (net quantity), read in the 2015 edition.
MARKET = Market(
    code="us",
    name="United States",
    ingredients_heading="Ingredients",
    aqua="WATER",
    net_style="dual",
    best_before_wording="Best before the end of",
    # By the area of the principal display panel; 1/8 in holds for panels over 5 and up to 25 square inches,
    # which the shipped layouts keep to.
    figure_heights=(FigureHeight(None, 3.1),),
    rules=(
        Rule("responsible person", "name and place of business", "16 CFR 500.5", "memory"),
        Rule("net quantity", "ounces and grams, cut off; no qualifying words", "16 CFR 500.6-500.21", "read"),
        Rule("function", "statement of identity", "16 CFR 500.4", "memory"),
    ),
    remains=(
        "Whether it is soap or a cosmetic: only soap that is labelled, sold and represented as nothing but soap "
        "falls outside 21 CFR 701.3 (21 CFR 701.20).",
        "The size of the principal display panel, on which the height of the net quantity hangs.",
    ),
)
