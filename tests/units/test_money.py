"""Money is read to the coin, shown one way, and shared out so that nothing is lost."""

from fractions import Fraction

import pytest

from ledger.errors import BadInput
from ledger.units.money import currency_digits, half_up, parse_money, share_of, share_out, show_money


# ISO 4217: the yen has no minor unit, the dinar of Kuwait has a thousandth, most have a hundredth.
@pytest.mark.parametrize(("code", "digits"), [("EUR", 2), ("GBP", 2), ("ARS", 2), ("JPY", 0), ("KWD", 3)])
def test_a_currency_has_its_own_number_of_decimals(code: str, digits: int) -> None:
    assert currency_digits(code) == digits


@pytest.mark.parametrize("code", ["", "eur", "XXX", "EURO"])
def test_an_unknown_currency_is_refused(code: str) -> None:
    with pytest.raises(BadInput, match="is not a currency known here"):
        currency_digits(code)


@pytest.mark.parametrize(
    ("text", "currency", "minor"),
    [
        ("12.40", "EUR", 1240),
        ("12,4", "EUR", 1240),
        ("12.40 EUR", "EUR", 1240),
        ("EUR 12.40", "EUR", 1240),
        ("1 284.05", "EUR", 128_405),
        ("12.400", "EUR", 1240),  # a nought more changes nothing
        ("1240", "JPY", 1240),
        ("1.234", "KWD", 1234),
        ("0", "EUR", 0),
    ],
)
def test_an_amount_is_read_in_the_smallest_coin(text: str, currency: str, minor: int) -> None:
    assert parse_money(text, currency) == minor


@pytest.mark.parametrize(
    ("text", "currency", "minor"),
    [
        ("£6.50", "GBP", 650),
        ("£ 6.50", "GBP", 650),
        ("$26.50", "USD", 2650),
        ("$26.50", "CAD", 2650),
        ("US$26.50", "USD", 2650),
        ("6,50 €", "EUR", 650),
        ("6,50€", "EUR", 650),
        ("€6,50", "EUR", 650),
        ("€.50", "EUR", 50),
        ("EUR 6.50", "EUR", 650),
        ("6.50 eur", "EUR", 650),
        ("6.50EUR", "EUR", 650),
        ("€ 1 284,05", "EUR", 128_405),
        ("1\u00a0284,05\u00a0€", "EUR", 128_405),
        ("¥650", "JPY", 650),
        ("65 kr", "SEK", 6500),
        ("12,90 zł", "PLN", 1290),
    ],
)
def test_the_sign_or_the_code_of_the_ledgers_money_may_stand_beside_an_amount(
    text: str, currency: str, minor: int
) -> None:
    assert parse_money(text, currency, what="the price") == minor


@pytest.mark.parametrize(
    ("text", "currency"),
    [("£6.50", "EUR"), ("$26.50", "EUR"), ("6,50 €", "GBP"), ("EUR 6.50", "USD"), ("6.50 usd", "EUR"), ("A$5", "USD")],
)
def test_another_currency_is_refused_in_one_line(text: str, currency: str) -> None:
    with pytest.raises(BadInput) as refused:
        parse_money(text, currency, what="the price")
    assert str(refused.value) == (
        f"The price '{text}' is not in {currency}, the money of this ledger; write it in {currency}."
    )


@pytest.mark.parametrize("text", ["€", "EUR", "€6.50 EUR", "€€6.50", "6.50 each", "six €", "€ -6.50", "-€6.50", "€-1"])
def test_a_sign_makes_no_number_of_what_is_none(text: str) -> None:
    with pytest.raises(BadInput, match="cannot be"):
        parse_money(text, "EUR")


def test_more_decimals_than_there_are_coins_are_refused() -> None:
    with pytest.raises(BadInput, match=r"^The cost '12\.345' has more decimals than EUR has; write 2 of them\.$"):
        parse_money("12.345", "EUR", what="the cost")
    with pytest.raises(BadInput, match="more decimals than JPY has"):
        parse_money("12.5", "JPY")


@pytest.mark.parametrize("text", ["", "-1", "1,284", "12.40 USD", "free"])
def test_an_amount_that_cannot_be_read_is_refused(text: str) -> None:
    with pytest.raises(BadInput):
        parse_money(text, "EUR")


def test_an_amount_is_shown_with_its_currency() -> None:
    assert show_money(1240, "EUR") == "12.40 EUR"
    assert show_money(5, "EUR") == "0.05 EUR"
    assert show_money(-1240, "EUR") == "-12.40 EUR"
    assert show_money(1240, "JPY") == "1240 JPY"
    assert show_money(1234, "KWD") == "1.234 KWD"


# 10.00 among three: the running totals 333.33, 666.67 and 1000 round to 333, 667 and 1000.
def test_shares_are_rounded_on_the_running_total() -> None:
    assert share_out(1000, [1, 1, 1]) == [333, 334, 333]


# 1 among two: the running totals 0.5 and 1 round half up to 1 and 1.
def test_a_half_goes_up() -> None:
    assert share_out(1, [1, 1]) == [1, 0]


def test_a_share_without_weight_gets_nothing() -> None:
    assert share_out(700, [0, 2, 0, 5]) == [0, 200, 0, 500]


@pytest.mark.parametrize("weights", [[], [0], [0, 0]])
def test_nothing_is_shared_out_among_nobody(weights: list[int]) -> None:
    with pytest.raises(BadInput):
        share_out(100, weights)


# 32.50 for 5 000 g; 600 g after the first 400 g bear 3250 x 1000/5000 - 3250 x 400/5000 = 650 - 260 = 390.
def test_a_stretch_bears_the_difference_of_two_running_totals() -> None:
    assert share_of(3250, 5000, 400, 1000) == 390
    with pytest.raises(BadInput):
        share_of(3250, 0, 0, 0)


@pytest.mark.parametrize(
    ("value", "whole"),
    [
        ("0", 0),
        ("499/1000", 0),
        ("1/2", 1),
        ("501/1000", 1),
        ("3/2", 2),
        ("1499/1000", 1),
        ("-1/2", 0),
        ("-501/1000", -1),
    ],
)
def test_a_half_goes_up_and_a_grain_less_does_not(value: str, whole: int) -> None:
    assert half_up(Fraction(value)) == whole
