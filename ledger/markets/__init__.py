"""The law as data: one file per market; a new market is a new file with a MARKET in it."""

from functools import cache
from importlib import import_module
from pathlib import Path

from ledger.domain.market import Market
from ledger.domain.names import near
from ledger.errors import BadInput


def market_codes() -> tuple[str, ...]:
    """The markets there is a file for."""
    return tuple(sorted(path.stem.replace("_", "-") for path in Path(__file__).parent.glob("[a-z]*.py")))


@cache
def market(code: str) -> Market:
    """One market by its code. Raises BadInput with the list."""
    wanted = code.strip().lower()
    if wanted not in market_codes():
        close = [one for one in market_codes() if one.startswith(f"{wanted}-")] or near(wanted, market_codes(), 1)
        hint = f" Did you mean {' or '.join(close)}?" if wanted and close else ""
        raise BadInput(f"'{code}' is not a market known here.{hint} Choose from {', '.join(market_codes())}.")
    found: Market = import_module(f"ledger.markets.{wanted.replace('-', '_')}").MARKET
    return found


@cache
def address_codes() -> tuple[str, ...]:
    """What a responsible person is given for; two markets of one country share theirs."""
    return tuple(sorted({market(code).address for code in market_codes()}))
