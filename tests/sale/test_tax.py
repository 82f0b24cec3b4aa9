"""Tax on what is sold: within a gross amount and on top of a net one, and which rate holds where on a day."""

from datetime import date

import pytest
from shop import Shop

from ledger.domain.sale.tax import Rate, Where, rate_that_holds, tax_upon, tax_within
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.add_stall import add_stall
from ledger.rows.lot import find_lot
from ledger.rows.sell.tax import recipes_of, taxes_at
from ledger.storage.personal import PersonDetails
from ledger.storage.tables.sale import CustomerTerms, TaxRate

MAY = date(2026, 5, 1)


# UK, HM Revenue & Customs, the VAT guide (Notice 700): the fraction of a price that is its tax is rate/(100 + rate),
# 1/6 at 20 %, 7/47 at 17.5 %, 1/21 at 5 % (from memory, unverified). The amounts below are those fractions by hand.
@pytest.mark.parametrize(
    ("gross", "rate", "tax"),
    [
        (6_00, 200_000, 1_00),  # a sixth of 6.00
        (4_50, 200_000, 75),  # a sixth of 4.50
        (6_50, 200_000, 1_08),  # 650/6 = 108.33
        (4_70, 175_000, 70),  # seven forty-sevenths of 4.70
        (1_05, 50_000, 5),  # a twenty-first of 1.05
        (3, 200_000, 1),  # 0.5 goes up
        (2, 200_000, 0),  # 0.33 does not
        (9, 200_000, 2),  # 1.5 goes up
        (10_00, 0, 0),  # a rate of nothing is a rate
        (0, 200_000, 0),
    ],
)
def test_the_tax_within_a_price(gross: int, rate: int, tax: int) -> None:
    assert tax_within(gross, rate) == tax
    assert tax_within(-gross, rate) == -tax  # what is given back is what was taken


# US, Streamlined Sales and Use Tax Agreement, section 324: the tax is carried to the third decimal place and rounded up
# to the whole cent whenever that third place is greater than four (from memory, unverified).
@pytest.mark.parametrize(
    ("net", "rate", "tax"),
    [
        (10_00, 70_000, 70),
        (6_50, 70_000, 46),  # 0.455: the third place is five
        (6_49, 70_000, 45),  # 0.4543
        (4_95, 82_500, 41),  # 0.408375
        (20_00, 60_250, 1_21),  # 1.205
        (19_99, 60_250, 1_20),  # 1.2043975
        (7, 70_000, 0),  # 0.0049
        (8, 70_000, 1),  # 0.0056
    ],
)
def test_the_tax_on_top_of_a_net_amount(net: int, rate: int, tax: int) -> None:
    assert tax_upon(net, rate) == tax
    assert tax_upon(-net, rate) == -tax


@pytest.mark.parametrize("rate", [0, 50_000, 60_250, 81_000, 190_000, 200_000, 255_000])
def test_what_is_put_on_top_is_found_within(rate: int) -> None:
    for net in range(2_000):
        assert tax_within(net + tax_upon(net, rate), rate) == tax_upon(net, rate)


def a_rate(number: int, ppm: int | None, *, on: date = MAY, **kind: object) -> Rate:
    empty: dict[str, object] = {"recipe_id": None, "place_id": None, "customer_id": None, "country": None}
    return Rate(**empty | kind, id=number, on=on, rate_ppm=ppm, name="VAT")  # type: ignore[arg-type]


def held(rates: list[Rate], where: Where = Where(), recipe: int | None = 1, on: date = MAY) -> int | None:
    found = rate_that_holds(rates, recipe, where, on)
    return found and found.id


def test_none_is_booked_until_one_is_set_and_from_its_day_on() -> None:
    assert held([]) is None
    one = a_rate(1, 200_000)
    assert held([one], on=date(2026, 4, 30)) is None
    assert held([one], on=MAY) == held([one], on=date(2026, 5, 2)) == 1


def test_the_latest_by_its_day_counts_and_of_one_day_the_last_written() -> None:
    rates = [a_rate(1, 200_000, on=date(2026, 5, 3)), a_rate(2, 175_000), a_rate(3, 50_000)]
    assert held(rates, on=date(2026, 5, 2)) == 3
    assert held(rates, on=date(2026, 5, 3)) == 1


def test_a_place_wins_over_a_customer_over_a_country_over_everywhere() -> None:
    rates = [
        a_rate(1, 1, place_id=7),
        a_rate(2, 2, customer_id=8),
        a_rate(3, 3, country="FR"),
        a_rate(4, 4, on=date(2026, 4, 1), recipe_id=1),
        a_rate(5, 5),
    ]
    assert held(rates, Where(7, 8, "FR")) == 1
    assert held(rates, Where(9, 8, "FR")) == 2
    assert held(rates, Where(9, 6, "FR")) == 3
    assert held(rates, Where(9, 6, "DE")) == 4  # set for the product, earlier than that for all
    assert held(rates, Where(9, 6, "DE"), recipe=2) == held(rates, Where(), recipe=None) == 5


def test_an_empty_rate_ends_it_where_it_was_set_and_there_alone() -> None:
    rates = [a_rate(1, 200_000), a_rate(2, None, customer_id=8), a_rate(3, 200_000, recipe_id=5)]
    assert held(rates, Where(customer_id=8)) is None
    assert held(rates, Where(customer_id=8), recipe=5) is None
    assert held(rates, Where(customer_id=9)) == 1
    assert held([*rates, a_rate(4, 0, customer_id=8, on=date(2026, 5, 9))], Where(customer_id=8)) is None
    assert held([*rates, a_rate(4, 0, customer_id=8)], Where(customer_id=8)) == 4  # nothing is a rate


@pytest.mark.usefixtures("frozen")
def test_what_holds_is_read_from_the_ledger_with_the_country_of_the_customer(shop: Shop) -> None:
    add_customer(shop.book, CustomerDetails("Tern Hall", PersonDetails()), kind="shop", code="tern-hall")
    add_stall(shop.book, "Quayside")
    lot = find_lot(shop.rows(), shop.batch).id
    recipe = recipes_of(shop.rows(), [lot])[lot]
    customer = shop.rows().execute("SELECT id FROM customer WHERE code = 'tern-hall'").fetchone()[0]
    stall = shop.rows().execute("SELECT id FROM place WHERE name = 'Quayside'").fetchone()[0]

    def rate(on: date = MAY, **outlet: int) -> int | None:
        here = taxes_at(shop.rows(), **{"place_id": None, "customer_id": None} | outlet, on=on)  # type: ignore[arg-type]
        found = here.of(recipe)
        return found and found.rate_ppm

    assert rate() is None
    with shop.book.write("tax set") as tx:
        tx.add(TaxRate(on=MAY, rate_ppm=200_000, name="VAT"))
        tx.add(TaxRate(on=MAY, rate_ppm=190_000, name="USt", country="DE"))
        tx.add(TaxRate(on=MAY, rate_ppm=50_000, name="VAT", place_id=stall, recipe_id=recipe))
        tx.add(CustomerTerms(customer_id=customer, on=date(2026, 5, 3), country="DE"))
        tx.say("Set.")
    assert rate() == 200_000
    assert rate(customer_id=customer) == 200_000
    assert rate(date(2026, 5, 3), customer_id=customer) == 190_000
    assert rate(place_id=stall) == 50_000
    assert rate(date(2026, 4, 30)) is None
