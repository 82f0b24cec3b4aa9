"""Great Britain."""

from functools import partial

from ledger.domain.label.market import Duty, Rule, UnitPrice
from ledger.domain.label.packers import Few, System, minimum_system
from ledger.domain.label.unit_price import show_per_kilogram
from ledger.markets.eu import FIRST_LIST, average
from ledger.markets.eu import MARKET as EU

# The same Article 19 as retained and amended by SI 2019/696, Schedule 34 (read in a secondary text). No instrument was
# found that adds the list of 2023: the first list is the default (state in November 2026 unverified).
_RETAINED = "the retained Regulation (EC) 1223/2009 (SI 2019/696, Schedule 34)"
_OWN = {
    "language": Rule(
        "language",
        "content, date, precautions and function in English",
        f"Art 19(5) of {_RETAINED}",
        "from memory, unverified",
    ),
    "responsible person": Rule(
        "responsible person",
        "name and address of one established in the United Kingdom, to which the Isle of Man, Jersey and Guernsey do "
        "not belong",
        f"Art 4 and 19(1)(a) of {_RETAINED}; Interpretation Act 1978, Sch 1",
        "Art 4 and the Schedule read; Art 19 read in a secondary text",
    ),
    "figure height": Rule(
        "figure height",
        "2, 3, 4 or 6 mm by nominal quantity",
        "the Quantity Marking and Abbreviations of Units Regulations 1987 (SI 1987/1538)",
        "bands read in a secondary text; that they stand there from memory, unverified",
    ),
}


def _own(rule: Rule) -> Rule:
    """The rule as the instruments of Great Britain have it."""
    article = rule.source.removeprefix("Regulation (EC) 1223/2009, ")
    return _OWN.get(rule.particular) or rule._replace(source=f"{article} of {_RETAINED}")


MARKET = EU._replace(
    code="gb",
    address="gb",
    name="Great Britain",
    countries="GB",
    languages={"": "en"},
    # The Isle of Man, Jersey and Guernsey are no part of the United Kingdom: Interpretation Act 1978, Sch 1 (read).
    seats="GB XI",
    packing=(
        average(Few(25_000, "Great Britain", "SI 2006/659", "read"), "SI 2006/659"),
        System(partial(minimum_system, source="SI 2006/659 (Great Britain)", status="read")),
    ),
    packing_of={},
    # SI 2024/1055 (read): per kilogram, since 6 April 2026
    unit_prices=(
        UnitPrice(
            show_per_kilogram,
            (
                "How a unit price is rounded in Great Britain was not found: it is rounded half up to the penny.",
                "Small shops and itinerant traders may be exempt (SI 2024/1055, from memory, unverified).",
            ),
        ),
    ),
    elsewhere={
        what: where.replace("of Regulation (EC) 1223/2009", f"of {_RETAINED}") for what, where in EU.elsewhere.items()
    },
    without_label="a notice right beside the bars may stand for the list of ingredients alone (Art 19(3) "
    f"of {_RETAINED}, from memory, unverified); what holds for bars that are not pre-packed was not looked up",
    allergens=(
        FIRST_LIST._replace(
            source="Annex III as retained; no instrument found that adds the list of 2023",
            status="read in a secondary text; state in November 2026 unverified",
            until=None,
            sold_on_until=None,
            bans="Annex II as retained; from memory, unverified",
            limits="Annex III as retained; from memory, unverified",
        ),
    ),
    rules=tuple(map(_own, EU.rules)),
    serious_effect=Duty(
        says="report a serious undesirable effect without delay",
        to="the Office for Product Safety and Standards (OPSS)",
        source=f"Art 23 of {_RETAINED}",
        status="from memory, unverified",
    ),
    remains=(
        "What the safety assessor says: this compares figures, and assesses nothing.",
        "Whether the list of allergens of 2023 has been taken over: look it up for the day of supply.",
    ),
)
