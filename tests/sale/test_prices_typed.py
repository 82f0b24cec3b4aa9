"""Prices as they are typed, listed and printed."""

import json
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.sale.pricing import ANYWHERE, Outlet
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.sale.set_price import PriceFor, set_price
from ledger.operations.sell.add_stall import add_stall
from ledger.rows.sell.product import product_by_name
from ledger.units.prices import show_price
from ledger.views.sale.price_list import price_list
from ledger.views.sale.prices import price_table


@pytest.fixture
def priced(shop: Shop, built: Any, run: Any, frozen: Any) -> Shop:  # noqa: ARG001
    once(outlets)(shop, run)
    return shop


def outlets(shop: Shop, run: Any) -> None:
    """A stall, a shop that buys, and a price of 6.50 from 1 May."""
    add_stall(shop.book, "Quay market")
    add_customer(shop.book, CustomerDetails("Tern Hall"), kind="shop", code="tern-hall")
    run("price", "set", "plain", "6.50", "--from", "2026-05-01")


def test_a_price_at_a_stall_and_for_a_shop_goes_before_the_one_anywhere(priced: Shop, run: Any) -> None:
    run("price", "set", "plain-bar", "7", "--stall", "quay")
    run("price", "set", "all", "4.20", "--to", "tern")
    rows, day = priced.rows(), date(2026, 6, 1)
    place = rows.execute("SELECT id FROM place WHERE kind = 'stall'").fetchone()[0]
    held = price_table(rows, day)
    assert held.single(1, ANYWHERE) == 650
    assert held.single(1, Outlet(place_id=place)) == 700
    assert held.single(1, Outlet(customer_id=1)) == 420
    assert price_table(rows, date(2026, 4, 30)).single(1, ANYWHERE) is None
    shown = run("price", "list").stdout
    assert shown.splitlines()[0] == "3 prices on 1 Jun 2026."
    assert "every product  Tern Hall    4.20 EUR  1 Jun 2026" in shown
    held = json.loads(run("price", "list", "--json").stdout)
    assert [(one["where"], one["price_minor"]) for one in held] == [
        (None, 650),
        ("Quay market", 700),
        ("Tern Hall", 420),
    ]


@pytest.mark.usefixtures("priced")
def test_a_price_of_a_day_to_come_holds_from_then(run: Any) -> None:
    run("price", "set", "plain", "6.80", "--from", "2026-06-06")
    assert "6.50 EUR" in run("price", "list", "--on", "2026-06-05").stdout
    assert "6.80 EUR" in run("price", "list", "--on", "2026-06-06").stdout


@pytest.mark.usefixtures("priced")
def test_an_ended_price_leaves_the_one_for_more_to_hold(run: Any) -> None:
    run("price", "set", "plain", "7", "--stall", "quay")
    said = run("price", "end", "plain", "--stall", "quay").stdout
    assert said == "From 1 Jun 2026 no price is set for Plain Bar at Quay market.\n"
    assert "6.50 EUR" in run("price", "list").stdout
    assert "7.00 EUR" not in run("price", "list").stdout


@pytest.mark.usefixtures("priced")
def test_what_was_never_set_is_not_ended(run: Any) -> None:
    said = run("price", "end", "plain", "--stall", "quay", code=2).stderr
    assert "No price is set for just that (Plain Bar at Quay market) on 1 Jun 2026" in said
    assert said.count("\n") == 1


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("plain",), 2, "Give a price, such as 6.50, or an offer"),
        (("plain", "6.50", "--offer", "3 for 15"), 2, "Give a price, such as 6.50, or an offer"),
        (("plain", "6.505"), 2, "has more decimals than EUR has"),
        (("plum", "6.50"), 2, "No product is called 'plum'."),
        (("plain", "6", "--stall", "quay", "--to", "tern"), 2, "Give --stall or --to, not both"),
        (("plain", "6", "--stall", "square"), 2, "No stall is called 'square'."),
        (("plain", "--offer", "three for 15"), 2, "is not an offer; write how many for how much"),
        (("plain", "--offer", "1 for 5"), 2, "An offer is for two bars or more"),
        (("plain", "--offer", "3 for 19.50"), 1, "3 for 19.50 EUR is no cheaper than 3 bars singly, which"),
        (("plain", "--offer", "3 for 15", "--from", "2026-04-30"), 1, "One bar has no price yet on 30 Apr 2026"),
    ],
)  # fmt: skip
def test_what_cannot_be_a_price_is_told_in_one_line(
    priced: Shop, run: Any, words: tuple[str, ...], code: int, said: str
) -> None:
    entries = priced.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    told = run("price", "set", *words, code=code).stderr
    assert said in told
    assert told.count("\n") == 1
    assert priced.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == entries


@pytest.mark.usefixtures("priced")
def test_an_offer_that_a_new_price_made_dear_is_named(run: Any) -> None:
    run("price", "set", "all", "--offer", "3 for 15")
    told = run("price", "set", "plain", "5.00")
    assert "The offer 3 for 15.00 EUR is no cheaper than single bars now" in told.stderr
    run("price", "end", "all", "--offer", "3")
    assert run("price", "set", "plain", "4.90").stderr == ""


@pytest.mark.usefixtures("priced")
def test_the_printed_list_gives_the_price_of_a_kilogram(run: Any, read: Any) -> None:
    """6.50 for 100 g is 65.00 a kilogram."""
    run("price", "set", "all", "--offer", "3 for 15")
    run("price", "list", "--market", "eu", "-o", "list.pdf")
    text = read(Path("list.pdf").read_bytes()).text()
    for words in ("Plain Bar", "100 g", "€6.50", "€65.00 per kg", "Any 3 for €15.00", "Prices from 1 Jun 2026"):
        assert words in text
    run("price", "list", "--market", "eu", "--cards", "ticket-stall", "-o", "cards.pdf")
    assert "€65.00 per kg" in read(Path("cards.pdf").read_bytes()).text()


def test_a_ticket_takes_the_price_that_is_set(priced: Shop, run: Any, read: Any) -> None:
    run("price", "set", "plain", "7", "--stall", "quay")
    for more, price in (((), "€6.50"), (("--stall", "quay"), "€7.00"), (("--price", "5"), "€5.00")):
        run("label", "ticket", priced.batch, "--market", "eu", *more, "-o", "ticket.pdf", "--force")
        assert price in read(Path("ticket.pdf").read_bytes()).text()


@pytest.mark.parametrize(("typed", "asked"), [("64.99", False), ("65", True), ("0.66", False), ("0.65", True)])
def test_a_price_ten_times_off_is_asked_about(priced: Shop, run: Any, typed: str, asked: bool) -> None:
    said = run("price", "set", "plain", typed, input="n\n", code=1 if asked else 0).stderr
    assert ("One bar costs 6.50 EUR so far; is" in said) is asked
    held = {"64.99": 6499, "0.66": 66}.get(typed, 650)
    assert price_table(priced.rows(), date(2026, 6, 1)).single(1, ANYWHERE) == held


def test_the_price_of_a_kilogram_on_the_list_is_that_of_the_worked_examples(shop: Shop) -> None:
    """6.50 for 110 g is 59.09 a kilogram and 4.95 for 85 g is 58.24 (law.md section 6, computed)."""
    day = date(2026, 6, 1)
    for code, net, price in (("large", "110 g", 650), ("small", "85 g", 495)):
        text = PLAIN_BAR.replace("plain-bar", code).replace("Plain Bar", code).replace('"100 g"', f'"{net}"')
        add_recipe(shop.book, text, file=f"{code}.toml")
        with shop.book.look() as rows:
            recipe = product_by_name(rows, code).recipe_id
        set_price(shop.book, PriceFor(recipe, ANYWHERE, code), price, on=day, currency="EUR")
    with shop.book.look() as rows:
        said = partial(show_price, currency="EUR", country="IE")
        found = price_list(rows, day, outlet=ANYWHERE, where="", market_code="eu", said=said)
    assert {one.product: one.unit_price for one in found.priced} == {
        "large": "€59.09 per kg",
        "small": "€58.24 per kg",
    }
    assert found.unpriced == ("Plain Bar",)
