"""What a check of a label leaves to a person: who answers where, weights, colours, nanomaterials, older oils."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from making import cut, deliver
from shop import PLAIN_BAR, SETUP, Shop

from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.house.setup import set_up
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.settings import Responsible
from ledger.views.label.label_check import label_check
from ledger.views.label.particulars import Particular

ON = date(2026, 6, 1)


def looked(
    shop: Shop, what: str, market: str = "eu", *, code: str | None = None, months: int | None = None
) -> Particular:
    with shop.book.look() as rows:
        found = label_check(rows, code or shop.batch, market, on=ON, best_before_months=months).particulars
    (one,) = [one for one in found if one.particular == what]
    return one


def at(shop: Shop, address: str, market: str, what: str = "responsible person") -> Particular:
    place = "us" if market.startswith("us") else market
    set_up(shop.book, replace(SETUP, addresses={place: Responsible("Nuala Quill", address)}))
    return looked(shop, what, market)


ADDRESSES: list[tuple[str, str, str]] = [
    ("eu", "3 Slip Lane, Port Emmer, Ireland", "found"),
    ("eu", "2 Quay, Belfast, Northern Ireland", "found"),  # serves both the Union and Great Britain
    ("gb", "2 Quay, Belfast BT1 1AA, United Kingdom", "found"),
    ("gb", "4 Mill Row, Leeds, England", "found"),
    ("eu", "4 Mill Row, Leeds, England", "for a person"),
    ("us-soap", "4 Mill Row, Leeds LS1 4AB", "for a person"),
    ("us-soap", "9 Elm St, Portland, OR 97201", "found"),
    ("gb", "5 Parade, Douglas, Isle of Man", "for a person"),
    ("eu", "5 Parade, Douglas, Isle of Man", "for a person"),
    ("gb", "1 Pier, St Helier, Jersey", "for a person"),
    ("ca", "7 Rue, Québec QC G1R 4P5", "found"),
    ("ca", "9 Elm St, Portland, OR 97201", "for a person"),
]


def test_an_address_outside_the_market_is_for_a_person(shop: Shop) -> None:
    """The parts of the British Islands: Interpretation Act 1978, Sch 1 (read)."""
    for market, address, stands in ADDRESSES:
        assert at(shop, address, market).stands == stands


def test_an_address_without_a_country_says_what_to_write(shop: Shop) -> None:
    one = at(shop, "3 Slip Lane, Port Emmer", "eu")
    assert one.stands == "for a person"
    assert "soapledger init --market 'eu=Name; street, town, country'" in one.found
    assert "it ends in Isle of Man" in at(shop, "5 Parade, Douglas, Isle of Man", "gb").found


def test_the_contact_of_a_cosmetic_lies_in_the_united_states_or_is_asked_about(shop: Shop) -> None:
    assert at(shop, "9 Elm St, Portland, OR 97201", "us-cosmetic", "contact").stands == "found"
    assert at(shop, "3 Slip Lane, Port Emmer, Ireland", "us-cosmetic", "contact").stands == "for a person"


def test_a_net_quantity_is_not_found_before_bars_were_weighed_at_packing(shop: Shop) -> None:
    """PLAIN_BAR declares 100 g; made on 6 May with no days of cure given, it may be packed on 3 June."""
    code = cut(shop.book)
    one = looked(shop, "net quantity", code=code)
    assert one.stands == "for a person"
    assert f"no bar was weighed yet; weigh some at packing: soapledger batch log {code}" in one.found
    log_readings(shop.book, code, [ReadingValue("bar weight", 130_000, "mg")], on=date(2026, 5, 20))
    assert "bars were weighed while curing alone" in looked(shop, "net quantity", code=code).found
    log_readings(shop.book, code, [ReadingValue("bar weight", 100_000, "mg")] * 2, on=date(2026, 6, 3))
    assert looked(shop, "net quantity", code=code) == Particular(
        "net quantity", "100 g", "nominal content at the time of packaging", "Art 19(1)(b)", "read", "found"
    )
    log_readings(shop.book, code, [ReadingValue("bar weight", 99_900, "mg")] * 2, on=date(2026, 6, 4))
    assert looked(shop, "net quantity", code=code).stands == "for a person"  # the mean lies below 100 g


def with_colour(shop: Shop, *incis: str) -> str:
    """A batch with 10 g of each, the first booked as a colourant, the rest as additives; returns its code."""
    text = PLAIN_BAR.replace("plain-bar", "dyed").replace("Plain Bar", "Dyed")
    for number, inci in enumerate(incis):
        kind = "additive" if number else "colourant"
        add_material(shop.book, MaterialFacts(f"stuff {number}", inci), kind=kind, code=None)
        deliver(shop.book, DeliveryLine(f"stuff {number}", 1_000_000, f"S{number}", 100))
        text += f'\n[[additive]]\nmaterial = "stuff {number}"\npercent_of_fats = 1\n'
    add_recipe(shop.book, text, file="dyed.toml")
    return cut(shop.book, "dyed")


def test_colours_are_named_by_number_with_what_is_known_of_them(shop: Shop) -> None:
    """Which list has which colour, and its American name, is from memory, and the check says so."""
    set_up(
        shop.book,
        replace(SETUP, addresses={one: Responsible("N. Quill", "Quay, Ireland") for one in ("eu", "us", "ca")}),
    )
    assert looked(shop, "colours").stands == "found"
    code = with_colour(shop, "CI 77491", "Kaolin", "CI 12345")
    eu = looked(shop, "colours", code=code)
    assert eu.stands == "for a person"
    assert "CI 77491: in Annex IV to Regulation (EC) 1223/2009 (from memory, unverified)" in eu.found
    assert "KAOLIN, if it is in for its colour: in Annex IV" in eu.found
    assert "as a colour it is declared CI 77004" in eu.found
    assert "CI 12345: not known here; look it up" in eu.found
    us = looked(shop, "colours", "us-cosmetic", code=code).found
    assert "its American name is Iron Oxides: write IRON OXIDES (CI 77491)" in us
    assert "KAOLIN, if it is in for its colour: NOT in the colour additives of 21 CFR 73 and 74" in us
    assert "which colours Canada permits is not known here" in looked(shop, "colours", "ca", code=code).found


@pytest.mark.parametrize(
    ("inci", "stands", "says"),
    [
        ("CI 77891", "for a person", "write 'CI 77891 (nano)' as its INCI name"),
        ("CI 77891 (NANO)", "found", "CI 77891 (NANO)"),
        ("CI 77491", "found", "nothing went in that is known here to be sold as a nanomaterial"),
    ],
)
def test_a_nanomaterial_is_asked_about_or_marked(shop: Shop, inci: str, stands: str, says: str) -> None:
    one = looked(shop, "nanomaterials", code=with_colour(shop, inci))
    assert one.stands == stands
    assert says in one.found


def test_may_contain_is_not_used_unless_an_ingredient_says_so(shop: Shop) -> None:
    assert looked(shop, "may contain").stands == "found"
    code = with_colour(shop, "May contain CI 77491")
    assert looked(shop, "may contain", code=code).stands == "for a person"


MONTHS: list[tuple[int, list[str]]] = [
    (11, []),  # made on 1 April 2026, so up to the end of February 2027
    (12, []),  # up to 31 March 2027, the very day of the coconut oil
    (13, ["coconut oil"]),  # to the end of April 2027
    (17, ["coconut oil"]),  # up to the end of August 2027, the very day of the olive oil
    (18, ["coconut oil", "olive oil"]),
]


def test_a_best_before_later_than_that_of_an_oil_is_for_a_person(shop: Shop) -> None:
    """Olive oil is best before 31 Aug 2027, coconut oil before 31 Mar 2027."""
    for months, late in MONTHS:
        one = looked(shop, "durability", months=months)
        assert one.stands == ("for a person" if late else "found")
        assert [oil for oil in ("coconut oil", "olive oil") if oil in one.found] == late


@pytest.mark.parametrize("market", ["us-soap", "us-cosmetic", "ca"])
def test_a_date_that_no_rule_asks_for_is_looked_at_all_the_same(shop: Shop, market: str) -> None:
    address = "9 Elm St, Portland, OR 97201" if market != "ca" else "4 Haute, Montreal, Canada"
    found = at(shop, address, market, "durability")
    assert "no date is asked for" in found.says
    assert found.found.startswith("Best used before the end of March 2028")


@pytest.mark.usefixtures("shop")
def test_it_is_said_at_the_plan_too(run: Any) -> None:
    said = " ".join(run("batch", "plan", "plain-bar").stdout.split())
    assert "keep longer than what goes in is best before: coconut oil, lot L2-8, end Mar 2027; olive oil, lot" in said


def test_the_signs_are_explained_at_the_foot(shop: Shop, run: Any) -> None:
    said = run("label", "check", shop.batch, "--market", "eu").stdout.splitlines()
    assert said[-1] == "Signs: ! is missing, ? is for a person to decide, no sign was found."
