"""The European Union (and Northern Ireland, where the same list of allergens applies)."""

from ledger.domain.market import FigureHeight, Market, Rule

# Regulation (EC) 1223/2009, Article 19; figures of height: Directive 76/211/EEC, annex I (read).
MARKET = Market(
    code="eu",
    name="European Union",
    ingredients_heading="Ingredients",
    aqua="AQUA",
    net_style="metric",
    best_before_wording="Best used before the end of",
    figure_heights=(
        FigureHeight(50_000, 2),
        FigureHeight(200_000, 3),
        FigureHeight(1_000_000, 4),
        FigureHeight(None, 6),
    ),
    rules=(
        Rule("responsible person", "name and address", "Art 19(1)(a)", "read in a secondary text"),
        Rule("net quantity", "nominal content at the time of packaging", "Art 19(1)(b)", "read"),
        Rule("durability", "month and year, or the period after opening above 30 months", "Art 19(1)(c)", "read"),
        Rule("batch code", "batch number or reference", "Art 19(1)(e)", "read in a secondary text"),
        Rule("function", "unless clear from the presentation", "Art 19(1)(f)", "read in a secondary text"),
        Rule("ingredients", "headed 'ingredients', by weight at the time of addition", "Art 19(1)(g)", "read"),
    ),
    remains=(
        "The safety assessment and the notification of the product, before a bar is supplied (Art 10 and 13).",
        "The fragrance allergens to be declared; this version does not work them out (Regulation (EU) 2023/1545).",
        "The language the country asks for, and precautions from the safety assessment.",
    ),
)
