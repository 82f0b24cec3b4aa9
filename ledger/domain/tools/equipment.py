"""Scales, thermometers and pH meters: what they are tried against, as typed and as shown."""

from ledger.domain.tools.readings import FIGURES, Figure
from ledger.errors import BadInput
from ledger.units.quantity import parse_temperature, show_degrees
from ledger.units.words import EquipmentKind, Units

# Each kind with what is read with it.
READ_WITH: dict[EquipmentKind, Figure] = {one.tool: one for one in FIGURES.values() if one.tool}
EXAMPLES: dict[EquipmentKind, str] = {"scale": "500 g", "thermometer": "0 C", "pH meter": "7.00"}


def parse_value(kind: EquipmentKind, text: str, *, what: str) -> int:
    """What it showed or should show, in the unit of its kind. Raises BadInput."""
    return READ_WITH[kind].parse(text, what=what)


def parse_tolerance(kind: EquipmentKind, text: str) -> int:
    """How far it may be off; in degrees it is a difference, so 1 F is 0.556 C. Raises BadInput."""
    value = parse_value(kind, text, what="the tolerance")
    if kind == "thermometer":
        value -= parse_temperature(f"0 {text.strip()[-1]}")
    if value < 0:
        raise BadInput(f"A tolerance of {text} cannot be; write how far it may be off, above or below.")
    return value


def passes(*, expected: int, found: int, tolerance: int) -> bool:
    """Whether it is off by no more than the tolerance; just at it still passes."""
    return abs(found - expected) <= tolerance


def show_value(kind: EquipmentKind, value: int, units: Units = "metric") -> str:
    """A value in the unit of its kind: 500 g, 0.0 °C, pH 7.00."""
    return f"pH {value / 1000:.2f}" if kind == "pH meter" else READ_WITH[kind].show(value, units)


def show_difference(kind: EquipmentKind, value: int, units: Units = "metric") -> str:
    """How far it is or may be off: 1 g, 0.5 °C, 0.05."""
    if kind == "thermometer":
        return show_degrees(value, units, fahrenheit_decimals=1)
    return f"{value / 1000:.2f}" if kind == "pH meter" else READ_WITH[kind].apart(value, units)
