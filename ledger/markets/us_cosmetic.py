"""The United States, for a bar that is a cosmetic: with a list of ingredients."""

from dataclasses import replace

from ledger.domain.label.market import ColourRule, Duty, Rule
from ledger.markets.us_soap import INCH_MM, STAMPED
from ledger.markets.us_soap import MARKET as SOAP

# 21 CFR 701.3 and 701.13, read in the 2015 edition; MoCRA 2022 read in a secondary text.
MARKET = SOAP._replace(
    code="us-cosmetic",
    name="United States (as a cosmetic)",
    declares_ingredients=True,
    ingredients_heading="INGREDIENTS",  # so that its letters are measured as capitals
    lettering=replace(SOAP.lettering, ingredients_mm=float(INCH_MM / 16)),  # 21 CFR 701.3(b) (read)
    colours=ColourRule("us", "the colour additives of 21 CFR 73 and 74", american=True),
    rules=(
        *(rule for rule in SOAP.rules if rule.particular not in ("only soap", "voluntary ingredients")),
        Rule(
            "ingredients",
            "descending predominance; then those of not more than 1 % in any order; then colour "
            "additives in any order; 'fragrance' may stand for fragrance",
            "21 CFR 701.3 (2015 edition)",
            "read",
        ),
        Rule(
            "letters of the ingredients",
            "at least 1/16 in (1.5875 mm); half that where the surface is under 12 sq in, of which no use is made "
            "here: the house minimum is higher",
            "21 CFR 701.3(b) (2015 edition) and (p)",
            "(b) read, (p) read in a secondary text",
        ),
        Rule(
            "colours",
            "listed ones alone, by their American name; a CI number may stand behind it in brackets, not alone; a "
            "clay, herb or spice added for its colour is a colour additive",
            "FD&C Act, sec 721; 21 CFR 73 and 74",
            "from memory, unverified",
        ),
        Rule(
            "contact",
            "a US address, telephone or electronic contact for adverse events",
            "MoCRA 2022",
            "read in a secondary text",
        ),
    ),
    serious_effect=Duty(
        says="report a serious adverse event within 15 business days, with the label",
        to="the Food and Drug Administration (FDA)",
        source="MoCRA 2022",
        status="read in a secondary text; the label from memory, unverified",
    ),
    remains=(
        STAMPED,
        "Whether the name of each fat is the one this market expects: names here are INCI names.",
        "The listing of the product and the registration of the place where it is made (MoCRA 2022), and what a small "
        "business is spared.",
    ),
)
