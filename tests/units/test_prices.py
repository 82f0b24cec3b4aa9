"""A price as a country writes it; the forms of the euro by the style guide of the EU, from memory."""

import pytest

from ledger.units.prices import show_price


@pytest.mark.parametrize(
    ("minor", "currency", "country", "said"),
    [
        (650, "GBP", "GB", "£6.50"),
        (650, "USD", "US", "$6.50"),
        (650, "CAD", "CA", "$6.50"),
        (650, "EUR", "IE", "€6.50"),
        (650, "EUR", "DE", "6,50\u00a0€"),
        (650, "EUR", "FR", "6,50\u00a0€"),
        (650, "EUR", "NL", "€\u00a06,50"),
        (650, "EUR", "GB", "€6.50"),
        (5, "GBP", "GB", "£0.05"),
        (980, "JPY", "JP", "¥980"),
        (6500, "SEK", "SE", "65,00\u00a0kr"),
        (650, "CHF", "CH", "6.50\u00a0CHF"),
        (999_999, "EUR", "DE", "9999,99\u00a0€"),
        (1_000_000, "EUR", "DE", "10\u00a0000,00\u00a0€"),
        (123_456_700, "GBP", "GB", "£1,234,567.00"),
    ],
)
def test_a_price_is_written_as_the_country_writes_it(minor: int, currency: str, country: str, said: str) -> None:
    assert show_price(minor, currency, country) == said
