"""Canada."""

from datetime import date

from ledger.domain.label.market import OVER, ColourRule, Duty, FigureHeight, Lettering, Market, Rule
from ledger.domain.label.net_quantity import metric
from ledger.markets.eu import FIRST_LIST, LONG_LIST
from ledger.markets.us_soap import UNDATED

# SOR/2024-63: the 24 from 12 April 2026; the long list for new products from 1 August 2026, for existing ones by
# 1 August 2028; the same thresholds (read in a secondary text, or from memory).
_SOURCE = "SOR/2024-63"
MARKET = Market(
    code="ca",
    address="ca",
    name="Canada",
    countries="CA",
    seats="CA",
    paper="Letter",  # common practice
    declares_ingredients=True,
    ingredients_heading="INGREDIENTS / INGRÉDIENTS",  # so that its letters are measured as capitals: sec 14(1)
    aqua="AQUA",
    fragrance_word="PARFUM",
    floats="not more than 1 %",  # Cosmetic Regulations, sec 21.4(2) (read)
    net_words=metric,
    packing=(),  # how Canada judges a sample of packages was not looked up
    packing_of={},
    dated_months=None,  # no rule on the durability of soap was found
    # Consumer Packaging and Labelling Regulations, sec 14(2) (read in the version of 2019 to 2024)
    heights_by="panel",
    figure_heights=(
        FigureHeight(32, 1.6),
        FigureHeight(258, 3.2),
        FigureHeight(645, 6.4),
        FigureHeight(2580, 9.5),
        FigureHeight(None, 12.7),
    ),
    # Bold figures: sec 14(2) (read); all else that is required 1.6 mm by the same measuring rule: sec 15 (from memory;
    # that the rule names sec 15 was read)
    lettering=Lettering(bold=True, others_mm=1.6, drawn=OVER),
    allergens=(
        FIRST_LIST._replace(
            source=_SOURCE,
            status="read in a secondary text",
            since=date(2026, 4, 12),
            sold_on_until=date(2028, 7, 31),
            bans=None,  # what Canada prohibits or limits was not looked up
            limits=None,
        ),
        LONG_LIST._replace(source=_SOURCE, status="read in a secondary text", bans=None, limits=None),
    ),
    languages={"": "en fr"},
    colours=ColourRule(None, "which colours Canada permits", american=False),
    rules=(
        Rule(
            "language",
            "what it is and its warnings in English and French; '100 g' is both, who answers for it stands in either",
            "Consumer Packaging and Labelling Regulations, sec 6; Cosmetic Regulations",
            "what it is and its warnings read in a secondary text, the rest from memory, unverified",
        ),
        Rule(
            "responsible person",
            "name and address of a person in Canada: the manufacturer, or the one authorised by a maker abroad",
            "Cosmetic Regulations, sec 2(1), SOR/2024-63 sec 1",
            "that it is one in Canada read, the rest from memory",
        ),
        Rule("net quantity", "metric", "Consumer Packaging and Labelling Regulations", "from memory, unverified"),
        Rule(
            "figure height",
            "bold, by the area of the principal display panel",
            "Consumer Packaging and Labelling Regulations, sec 14(2)",
            "read in the version of 2019 to 2024",
        ),
        Rule(
            "ingredients",
            "INCI names, those of more than 1 % by falling weight, then the rest and all colouring agents in any "
            "order; 'parfum' may stand at the end",
            "Cosmetic Regulations, sec 21.4",
            "read in the version of 2024",
        ),
        Rule(
            "letters",
            "all else that is required at least 1.6 mm, by the small letter o or by capitals where all is capitals; "
            "0.8 mm where all of it stands on a display surface of 10 cm² or less, of which no use is made here",
            "Consumer Packaging and Labelling Regulations, sec 14(1), 15 and 16",
            "measuring read; the heights from memory, unverified",
        ),
        Rule(
            "narrow band",
            "a wrapper or band too narrow to have a display side carries its label on a ticket or tag",
            "Consumer Packaging and Labelling Regulations, after sec 7",
            "read in the version of 2013; what makes a band narrow from memory, unverified",
        ),
        UNDATED,
        Rule("colours", "in any order behind the rest", "Cosmetic Regulations, sec 21.4(2)", "read"),
        Rule("allergens", "each that exceeds 0.01 % in a rinse-off product", _SOURCE, "read in a secondary text"),
        Rule("function", "identity in both languages", "Cosmetic Regulations", "read in a secondary text"),
    ),
    elsewhere={},  # a tag, a card or a leaflet may do (sec 21.5); what of it holds for a bar was not looked up
    unit_prices=(),  # none was looked up
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
