"""Great Britain."""

from dataclasses import replace

from ledger.domain.market import Rule
from ledger.markets.eu import MARKET as EU

# The same Article 19 as amended by SI 2019/696, Schedule 34 (read in a secondary text); heights: SI 2006/659 (read).
MARKET = replace(
    EU,
    code="gb",
    name="Great Britain",
    rules=tuple(
        Rule("responsible person", "name and address in the United Kingdom", "Art 19(1)(a), SI 2019/696", "memory")
        if rule.particular == "responsible person"
        else replace(rule, source=f"{rule.source}, SI 2019/696")
        for rule in EU.rules
    ),
    remains=(
        "The safety assessment and the notification of the product, before a bar is supplied.",
        "The fragrance allergens to be declared; this version does not work them out.",
        "Precautions from the safety assessment.",
    ),
)
