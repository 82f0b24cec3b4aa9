"""A kilogram's price, rounded once."""

from fractions import Fraction
from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.label.unit_price import (
    exact_per_kilogram,
    needed,
    per_kilogram,
    round_ni,
    show_per_kilogram,
    show_per_kilogram_ni,
    show_per_pound,
)
from ledger.errors import BadInput
from ledger.units.money import show_money


@pytest.mark.parametrize(
    ("price", "net", "currency", "said"),
    [
        (650, 110_000, "GBP", "59.09 GBP per kg"),  # 6.50 / 0.110 = 59.0909
        (495, 85_000, "EUR", "58.24 EUR per kg"),  # 4.95 / 0.085 = 58.2353
        (980, 95_000, "JPY", "10316 JPY per kg"),  # 980 / 0.095 = 10 315.79
        (1234, 100_000, "KWD", "12.340 KWD per kg"),
    ],
)
def test_the_price_of_a_kilogram_is_shown_in_its_currency(price: int, net: int, currency: str, said: str) -> None:
    assert show_per_kilogram(price, net, partial(show_money, currency=currency)) == said


# 1 / 0.08 = 12.5; 3 / 0.08 = 37.5
def test_a_half_goes_up() -> None:
    assert per_kilogram(1, 80_000) == 13
    assert per_kilogram(3, 80_000) == 38


@pytest.mark.parametrize(
    ("price", "net", "said"),
    [
        (1, 81_000, "12.3p per kg"),  # 1 / 0.081 = 12.3457
        (1, 80_000, "12.5p per kg"),
        (9, 90_009, "1.00 GBP per kg"),  # 99.99p is below one pound, and 100.0p to the tenth
        (650, 110_000, "59.09 GBP per kg"),
    ],
)
def test_in_northern_ireland_pence_have_tenths_below_a_pound(price: int, net: int, said: str) -> None:
    assert show_per_kilogram_ni(price, net, partial(show_money, currency="GBP")) == said


@pytest.mark.parametrize(
    ("price", "net", "said"),
    [
        (650, 100_000, "29.48 USD per lb"),  # 6.50 × 453.59237 / 100 = 29.4835
        (100, 453_592, "1.00 USD per lb"),
        (0, 100_000, "0.00 USD per lb"),
    ],
)
def test_the_price_of_a_pound_is_that_of_453_59237_g(price: int, net: int, said: str) -> None:
    assert show_per_pound(price, net, partial(show_money, currency="USD")) == said


def test_only_a_bar_of_a_kilogram_needs_no_unit_price() -> None:
    assert not needed(6500, 1_000_000)
    assert needed(6500, 999_999)


def test_no_weight_or_a_price_below_zero_is_refused() -> None:
    with pytest.raises(BadInput, match="needs the net weight"):
        per_kilogram(650, 0)
    with pytest.raises(BadInput, match="below zero"):
        per_kilogram(-1, 110_000)


@given(price=st.integers(0, 10**9), net=st.integers(1, 10**8))
def test_rounding_moves_it_by_half_a_coin_at_most(price: int, net: int) -> None:
    exact = exact_per_kilogram(price, net)
    assert -Fraction(1, 2) < per_kilogram(price, net) - exact <= Fraction(1, 2)
    assert abs(round_ni(exact) - exact) <= (Fraction(1, 20) if exact < 100 else Fraction(1, 2))
