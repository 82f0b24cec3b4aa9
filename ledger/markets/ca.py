"""Canada."""

from dataclasses import replace
from datetime import date

from ledger.domain.market import Duty, FigureHeight, Market, Rule
from ledger.markets.eu import FIRST_LIST, LONG_LIST

# SOR/2024-63: the 24 from 12 April 2026; the long list for new products from 1 August 2026, for existing ones by
# 1 August 2028; the same thresholds (read in a secondary text, or from memory).
_SOURCE = "SOR/2024-63"
MARKET = Market(
    code="ca",
    address="ca",
    name="Canada",
    declares_ingredients=True,
    ingredients_heading="Ingredients / Ingrédients",
    aqua="AQUA",
    fragrance_word="PARFUM",
    floats="below 1 %",  # from memory, unverified
    net_style="metric",
    net_system="net",
    best_before_wording="Best before / Meilleur avant",
    # from memory, unverified: Consumer Packaging and Labelling Regulations; taken from the EU figures
    figure_heights=(FigureHeight(50_000, 2), FigureHeight(200_000, 3), FigureHeight(None, 4)),
    needs_assessment=False,
    allergens=(
        replace(
            FIRST_LIST,
            source=_SOURCE,
            status="read in a secondary text",
            since=date(2026, 4, 12),
            sold_on_until=date(2028, 7, 31),
            bans=None,  # what Canada prohibits was not looked up
        ),
        replace(LONG_LIST, source=_SOURCE, status="read in a secondary text", bans=None),
    ),
    rules=(
        Rule(
            "responsible person",
            "name and address of the manufacturer or importer",
            "Cosmetic Regulations",
            "from memory, unverified",
        ),
        Rule("net quantity", "metric", "Consumer Packaging and Labelling Regulations", "from memory, unverified"),
        Rule(
            "figure height",
            "by nominal quantity",
            "Consumer Packaging and Labelling Regulations",
            "from memory, unverified",
        ),
        Rule(
            "ingredients",
            "INCI names by weight, 'parfum' at the end",
            "Cosmetic Regulations",
            "from memory, unverified",
        ),
        Rule("allergens", "each that exceeds 0.01 % in a rinse-off product", _SOURCE, "read in a secondary text"),
        Rule("function", "identity in both languages", "Cosmetic Regulations", "from memory, unverified"),
    ),
    serious_effect=Duty(
        says="report a serious incident; within how many days is to be looked up",
        to="Health Canada",
        source="Canada Consumer Product Safety Act, sec 14, or the Cosmetic Regulations",
        status="from memory, unverified",
    ),
    remains=(
        "Identity and warnings in both languages, and the notification of the product.",
        "Whether the product is new: existing ones have until 1 August 2028 for the long list.",
    ),
)
