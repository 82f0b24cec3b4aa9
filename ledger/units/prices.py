"""A price as a country writes it on a shelf (£6.50, $6.50, 6,50 €), and an offer as she types it."""

from ledger.errors import BadInput
from ledger.units.money import currency_digits, parse_money, show_money
from ledger.units.quantity import parse_pieces

# The signs that a price is written with; any other currency keeps its code. Common practice, no source.
_SIGNS = {
    "GBP": "£", "USD": "$", "CAD": "$", "AUD": "$", "NZD": "$", "EUR": "€", "JPY": "¥", "PLN": "zł", "CZK": "Kč",
    "SEK": "kr", "NOK": "kr", "DKK": "kr",
}  # fmt: skip
_BEFORE = {"GBP", "USD", "CAD", "AUD", "NZD", "JPY"}
# Where the sign of the euro stands before the figures, and where a point parts euro from cent: in all other countries
# it stands behind them, after a comma (the Interinstitutional Style Guide of the EU, 7.3.3, from memory, unverified).
_EURO_WITH_POINT = {"IE", "MT", "GB", "US", "CA"}
_EURO_BEFORE = {*_EURO_WITH_POINT, "NL", "AT"}


def show_price(minor: int, currency: str, country: str) -> str:
    """Minor units as they stand on a price card in a country; one line, not to be broken."""
    sign, digits = _SIGNS.get(currency), currency_digits(currency)
    if sign is None:
        return show_money(minor, currency).replace(" ", "\u00a0")
    point = currency in _BEFORE or (currency == "EUR" and country in _EURO_WITH_POINT)
    whole, rest = divmod(minor, 10**digits)
    grouped = f"{whole:,}" if point else f"{whole:,}".replace(",", "\u00a0") if whole >= 10_000 else f"{whole}"
    figures = f"{grouped}{'.' if point else ','}{rest:0{digits}d}" if digits else grouped
    if currency in _BEFORE or (currency == "EUR" and country in _EURO_BEFORE):
        return f"{sign}{figures}" if point else f"{sign}\u00a0{figures}"
    return f"{figures}\u00a0{sign}"


def parse_price(text: str, currency: str) -> tuple[int, str]:
    """A price as it is written, and its currency: that of its sign or code, else the one given.

    So a sign for a stall abroad is in the money that is paid there. Raises BadInput for a sign of several currencies.
    """
    plain = text.strip()
    typed = next((one for one in _SIGNS if plain.startswith(one) or plain.endswith(one)), None)
    sign = next((one for one in _SIGNS.values() if plain.startswith(one) or plain.endswith(one)), None)
    if typed is None and sign is not None and sign != _SIGNS.get(currency):
        several = [one for one, its in _SIGNS.items() if its == sign]
        if len(several) > 1:
            raise BadInput(f"'{plain}' may be {' or '.join(several)}; write the code, such as 6.50 {several[0]}.")
        (typed,) = several
    return parse_money(plain, typed or currency, what="the price"), typed or currency


def parse_offer(text: str, currency: str) -> tuple[int, int]:
    """How many bars go together for how much, in minor units: '3 for 15'. Raises BadInput."""
    number, found, price = text.strip().partition(" for ")
    if not found or not number.strip().isdecimal():
        raise BadInput(f"'{text.strip()}' is not an offer; write how many for how much, such as --offer \"3 for 15\".")
    bars = parse_pieces(number, what="the number of bars of the offer")
    if bars < 2:
        raise BadInput(
            "An offer is for two bars or more; the price of one stands alone: soapledger price set PRODUCT PRICE"
        )
    return bars, parse_money(price, currency, what="the price of the offer")
