"""Which price holds, and what bars cost with offers: every figure is worked out by hand, or by trying every way."""

from datetime import date, timedelta
from functools import cache
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.sale.pricing import ANYWHERE, Outlet, PriceTable, SetPrice, Worth, cheapest, no_cheaper

ROSEMARY, OAT = 1, 2
SATURDAY, SHOP = Outlet(place_id=5), Outlet(customer_id=5)
MAY = date(2026, 5, 1)


def table(*prices: tuple[int | None, Outlet, date, int, int | None], on: date = MAY) -> PriceTable:
    return PriceTable([SetPrice(number, *one) for number, one in enumerate(prices, start=1)], on)


def test_what_was_set_for_the_outlet_goes_first_and_there_the_product_before_all() -> None:
    everything = [
        (None, ANYWHERE, MAY, 1, 600),
        (ROSEMARY, ANYWHERE, MAY, 1, 650),
        (None, SHOP, MAY, 1, 420),
        (ROSEMARY, SATURDAY, MAY, 1, 700),
    ]
    held = table(*everything)
    assert held.single(ROSEMARY, SATURDAY) == 700
    assert held.single(ROSEMARY, SHOP) == 420
    assert held.single(ROSEMARY) == 650
    assert held.single(OAT, SATURDAY) == 600
    assert held.single(OAT, SHOP) == 420
    assert table().single(OAT) is None


def test_a_stall_and_a_customer_of_one_number_are_two_outlets() -> None:
    assert table((ROSEMARY, SATURDAY, MAY, 1, 700)).single(ROSEMARY, SHOP) is None


@pytest.mark.parametrize(("days", "held"), [(-1, 650), (0, 700), (1, 700)])
def test_a_price_holds_from_its_day_on(days: int, held: int) -> None:
    """Set on two days for two; the later one holds on its own day and not the day before."""
    day = date(2026, 6, 6)
    prices = [(ROSEMARY, ANYWHERE, day, 1, 700), (ROSEMARY, ANYWHERE, MAY, 1, 650)]
    assert table(*prices, on=day + timedelta(days)).single(ROSEMARY) == held


def test_of_two_set_for_one_day_the_later_set_holds() -> None:
    assert table((ROSEMARY, ANYWHERE, MAY, 1, 650), (ROSEMARY, ANYWHERE, MAY, 1, 620)).single(ROSEMARY) == 620


def test_an_ended_price_leaves_the_next_to_hold() -> None:
    prices = [(ROSEMARY, ANYWHERE, MAY, 1, 650), (ROSEMARY, SATURDAY, MAY, 1, 700), (ROSEMARY, SATURDAY, MAY, 1, None)]
    assert table(*prices).single(ROSEMARY, SATURDAY) == 650


def test_three_for_fifteen_over_seven_bars() -> None:
    """2 x 15.00 + 6.50 = 36.50 in place of 45.50."""
    held = table((None, ANYWHERE, MAY, 1, 650), (None, ANYWHERE, MAY, 3, 1500))
    assert held.worth({ROSEMARY: 7}) == {ROSEMARY: Worth(7, 650, 4550, 3650)}


def test_an_offer_for_all_mixes_products_and_its_odd_penny_is_not_lost() -> None:
    """2 + 1 bars for 10.00: by 6.50 a bar 6.67 and 3.33, half up at the running total (6.666...)."""
    held = table((None, ANYWHERE, MAY, 1, 650), (None, ANYWHERE, MAY, 3, 1000))
    assert held.worth({ROSEMARY: 2, OAT: 1}) == {ROSEMARY: Worth(2, 650, 1300, 667), OAT: Worth(1, 650, 650, 333)}


def test_an_offer_for_a_product_does_not_mix() -> None:
    held = table((None, ANYWHERE, MAY, 1, 650), (ROSEMARY, ANYWHERE, MAY, 3, 1500))
    assert held.worth({ROSEMARY: 2, OAT: 1}) == {ROSEMARY: Worth(2, 650, 1300, 1300), OAT: Worth(1, 650, 650, 650)}


def test_a_product_with_an_offer_of_its_own_leaves_the_one_for_all() -> None:
    """Three rosemary for 14.00; two oat alone do not make three for 15.00."""
    prices = [
        (None, ANYWHERE, MAY, 1, 650),
        (None, ANYWHERE, MAY, 3, 1500),
        (ROSEMARY, ANYWHERE, MAY, 3, 1400),
    ]
    assert table(*prices).worth({ROSEMARY: 3, OAT: 2}) == {
        ROSEMARY: Worth(3, 650, 1950, 1400),
        OAT: Worth(2, 650, 1300, 1300),
    }


def test_an_offer_for_everywhere_leaves_an_outlet_with_a_price_of_its_own() -> None:
    """A shop that pays 4.20 is not also given three for 15.00 of the market; an offer of its own holds."""
    prices = [
        (None, ANYWHERE, MAY, 1, 650),
        (None, ANYWHERE, MAY, 3, 1200),
        (ROSEMARY, SHOP, MAY, 1, 420),
    ]
    assert table(*prices).worth({ROSEMARY: 3}, SHOP) == {ROSEMARY: Worth(3, 420, 1260, 1260)}
    assert table(*prices).worth({ROSEMARY: 3}, SATURDAY) == {ROSEMARY: Worth(3, 650, 1950, 1200)}
    assert table(*prices).worth({OAT: 3}, SHOP) == {OAT: Worth(3, 650, 1950, 1200)}  # it has no price there
    own = (None, SHOP, MAY, 3, 1200)
    assert table(*prices, own).worth({ROSEMARY: 3}, SHOP) == {ROSEMARY: Worth(3, 420, 1260, 1200)}


def test_a_product_without_a_price_is_left_out() -> None:
    assert table((ROSEMARY, ANYWHERE, MAY, 1, 650)).worth({OAT: 3}) == {}


def test_a_price_of_nothing_is_shared_as_nothing() -> None:
    assert table((OAT, ANYWHERE, MAY, 1, 0)).worth({OAT: 3}) == {OAT: Worth(3, 0, 0, 0)}


def test_two_offers_make_the_cheapest() -> None:
    """7 bars at 6.00, 2 for 11.00, 5 for 25.00: 25.00 + 11.00."""
    assert cheapest([600] * 7, [(2, 1100), (5, 2500)]) == 3600


def test_the_dearest_bars_go_under_the_offer() -> None:
    assert cheapest([800, 400, 700, 600], [(3, 1500)]) == 1900


@given(
    prices=st.lists(st.integers(0, 900), max_size=8),
    offers=st.lists(st.tuples(st.integers(2, 5), st.integers(0, 3000)), max_size=3),
)
def test_nothing_is_cheaper_than_the_cheapest(prices: list[int], offers: list[tuple[int, int]]) -> None:
    """Every way to leave each bar single or put it under one of the offers, tried out."""

    @cache
    def tried(left: tuple[int, ...]) -> int:
        if not left:
            return 0
        best = left[0] + tried(left[1:])
        for bars, price in offers:
            if bars <= len(left):
                for others in combinations(range(1, len(left)), bars - 1):
                    rest = tuple(p for at, p in enumerate(left) if at and at not in others)
                    best = min(best, price + tried(rest))
        return best

    assert cheapest(prices, offers) == tried(tuple(sorted(prices)))


@given(
    numbers=st.dictionaries(st.integers(1, 4), st.integers(0, 20), min_size=1),
    singles=st.dictionaries(st.integers(1, 4), st.integers(1, 900)),
    offers=st.lists(st.tuples(st.none() | st.integers(1, 4), st.integers(2, 6), st.integers(0, 3000)), max_size=4),
)
def test_shares_are_never_no_cheaper_and_never_below_nothing(
    numbers: dict[int, int], singles: dict[int, int], offers: list[tuple[int | None, int, int]]
) -> None:
    prices = [(recipe, ANYWHERE, MAY, 1, price) for recipe, price in singles.items()]
    held = table(*prices, *((recipe, ANYWHERE, MAY, bars, price) for recipe, bars, price in offers))
    found = held.worth(numbers)
    assert found.keys() == numbers.keys() & singles.keys()
    for recipe, worth in found.items():
        assert worth.gross_minor == numbers[recipe] * singles[recipe]
        assert 0 <= worth.net_minor <= worth.gross_minor


@pytest.mark.parametrize(("price", "none"), [(2099, False), (2100, True), (2101, True)])
def test_an_offer_must_be_cheaper_than_the_dearest_bars_singly(price: int, none: bool) -> None:
    """Three at 7.00 are 21.00; that three at 6.50 are less is no matter."""
    assert no_cheaper(3, price, [650, 700]) is none
