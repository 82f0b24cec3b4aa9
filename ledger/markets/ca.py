"""Canada."""

from ledger.domain.market import FigureHeight, Market, Rule

# SOR/2024-63 (read in a secondary text); the rest from memory, unverified.
MARKET = Market(
    code="ca",
    name="Canada",
    ingredients_heading="Ingredients / Ingrédients",
    aqua="AQUA",
    net_style="metric",
    best_before_wording="Best before / Meilleur avant",
    # from memory, unverified: Consumer Packaging and Labelling Regulations; taken from the EU figures
    figure_heights=(FigureHeight(50_000, 2), FigureHeight(200_000, 3), FigureHeight(None, 4)),
    rules=(
        Rule(
            "responsible person", "name and address of the manufacturer or importer", "Cosmetic Regulations", "memory"
        ),
        Rule("ingredients", "INCI names, 'parfum' at the end", "Cosmetic Regulations", "memory"),
    ),
    remains=(
        "Identity and warnings in both languages, and the notification of the product.",
        "The fragrance allergens (SOR/2024-63); this version does not work them out.",
    ),
)
