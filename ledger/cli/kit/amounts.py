"""How an amount of something is shown."""

from ledger.units.quantity import show_mass
from ledger.units.words import Units


def amount(quantity: int, counted: bool, units: Units) -> str:
    """Pieces as a number, anything else as a mass."""
    return str(quantity) if counted else show_mass(quantity, units)
