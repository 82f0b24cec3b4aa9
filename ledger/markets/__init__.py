"""The law as data: one file per market; a new market is a new file with a MARKET in it."""

from collections.abc import Container
from functools import cache
from importlib import import_module
from pathlib import Path

from ledger.domain.label.market import Market
from ledger.errors import BadInput
from ledger.units.names import near


@cache
def laws() -> tuple[Market, ...]:
    """Every market there is a file for, in the order of their codes."""
    files = (path.stem for path in Path(__file__).parent.glob("[a-z]*.py"))
    found: list[Market] = [import_module(f"ledger.markets.{name}").MARKET for name in files]
    return tuple(sorted(found, key=lambda law: law.code))


def market_codes() -> tuple[str, ...]:
    """The codes of all markets."""
    return tuple(law.code for law in laws())


def known_market(code: str) -> Market | None:
    """One market by its code; None where no file is left for it."""
    return next((law for law in laws() if law.code == code), None)


def market(code: str) -> Market:
    """One market by its code as typed. Raises BadInput with the list."""
    wanted, codes = code.strip().lower(), market_codes()
    if found := known_market(wanted):
        return found
    close = [one for one in codes if one.startswith(f"{wanted}-")] or near(wanted, codes, 1)
    hint = f" Did you mean {' or '.join(close)}?" if wanted and close else ""
    raise BadInput(f"'{code}' is not a market known here.{hint} Choose from {', '.join(codes)}.")


def address_codes() -> tuple[str, ...]:
    """What a responsible person is given for; two markets of one country share theirs."""
    return tuple(sorted({law.address for law in laws()}))


def laws_at(addresses: Container[str]) -> tuple[Market, ...]:
    """The markets there is a responsible person for."""
    return tuple(law for law in laws() if law.address in addresses)


def home_markets(addresses: Container[str], country: str) -> tuple[Market, ...]:
    """The markets with an address, and of several those of her country, if it has any."""
    found = laws_at(addresses)
    return found if len(found) < 2 else tuple(law for law in found if country in law.countries.split()) or found


def own_market(addresses: Container[str], country: str) -> Market:
    """The market of a maker who names none. Raises BadInput, with what to type, where she has none or several."""
    found = home_markets(addresses, country)
    if not found:
        raise BadInput(
            "There is no responsible person for any market yet; give one with: soapledger init --market "
            f"'MARKET=Name; street, town', where MARKET is one of {', '.join(address_codes())}."
        )
    if len(found) > 1:
        ways = " or ".join(f"--market {law.code} ({law.name})" for law in found)
        raise BadInput(f"There is more than one market with an address; say which, with {ways}.")
    return found[0]


def paper_in(country: str) -> str:
    """The paper of a country; A4 (ISO 216, common practice) where no market names it."""
    return next((law.paper for law in laws() if country in law.countries.split()), "A4")
