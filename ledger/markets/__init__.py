"""The law as data: one file per market, found by its name."""

from pathlib import Path


def market_codes() -> tuple[str, ...]:
    """The markets there is a file for."""
    return tuple(sorted(path.stem for path in Path(__file__).parent.glob("[a-z]*.py")))
