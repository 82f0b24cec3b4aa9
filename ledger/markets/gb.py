"""Great Britain."""

from dataclasses import replace
from functools import partial

from ledger.domain.label.market import Duty, Rule, UnitPrice
from ledger.domain.label.packers import Few, System, minimum_system
from ledger.domain.label.unit_price import show_per_kilogram
from ledger.markets.eu import FIRST_LIST, UNIT_PRICE_REMAINS, average
from ledger.markets.eu import MARKET as EU

# The same Article 19 as amended by SI 2019/696, Schedule 34 (read in a secondary text); heights: SI 2006/659 (read).
# No instrument was found that adds the list of 2023: the first list is the default (state in November 2026 unverified).
MARKET = replace(
    EU,
    code="gb",
    address="gb",
    name="Great Britain",
    countries="GB",
    packing=(
        average(Few(25_000, "Great Britain", "SI 2006/659", "read")),
        System(partial(minimum_system, source="SI 2006/659 (Great Britain)", status="read")),
    ),
    packing_of={},
    # SI 2024/1055 (read): per kilogram, since 6 April 2026
    unit_prices=(UnitPrice(show_per_kilogram, UNIT_PRICE_REMAINS),),
    allergens=(
        replace(
            FIRST_LIST,
            source="Annex III as retained; no instrument found that adds the list of 2023",
            status="read in a secondary text; state in November 2026 unverified",
            until=None,
            sold_on_until=None,
            bans="Annex II as retained; from memory, unverified",
        ),
    ),
    rules=tuple(
        Rule(
            "responsible person",
            "name and address in the United Kingdom",
            "Art 19(1)(a), SI 2019/696",
            "from memory, unverified",
        )
        if rule.particular == "responsible person"
        else rule._replace(source=f"{rule.source}, SI 2019/696")
        for rule in EU.rules
    ),
    serious_effect=Duty(
        says="report a serious undesirable effect without delay",
        to="the Office for Product Safety and Standards (OPSS)",
        source="Regulation (EC) 1223/2009, Art 23, SI 2019/696",
        status="from memory, unverified",
    ),
    remains=(
        "What the safety assessor says: this compares figures, and assesses nothing.",
        "Whether the list of allergens of 2023 has been taken over: look it up for the day of supply.",
    ),
)
