"""Scales, thermometers and pH meters: what they are tried against, as typed and as shown."""

from fractions import Fraction

from ledger.domain.names import near
from ledger.domain.quantity import parse_mass, parse_ph, parse_temperature, show_mass, show_temperature
from ledger.errors import BadInput

# Each kind with the unit its readings are kept in.
UNIT_OF = {"scale": "mg", "thermometer": "milli-C", "pH meter": "milli-pH"}
EXAMPLES = {"scale": "500 g", "thermometer": "0 C", "pH meter": "7.00"}


def kind_meant(text: str) -> str:
    """The kind of equipment meant by its name or the start of it. Raises BadInput with the list."""
    wanted = text.strip().casefold()
    fits = [kind for kind in UNIT_OF if wanted and kind.casefold().startswith(wanted)]
    if len(fits) == 1:
        return fits[0]
    close = near(text, UNIT_OF, 1)
    hint = f" Did you mean {close[0]}?" if close else ""
    raise BadInput(f"'{text}' is not a kind of equipment known here.{hint} Write one of {', '.join(UNIT_OF)}.")


def parse_value(kind: str, text: str, *, what: str) -> int:
    """What it showed or should show, in the unit of its kind. Raises BadInput."""
    if kind == "scale":
        return parse_mass(text, what=what)
    if kind == "thermometer":
        return parse_temperature(text, what=what)
    return parse_ph(text, what=what)


def parse_tolerance(kind: str, text: str) -> int:
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


def show_value(kind: str, value: int, units: str = "metric") -> str:
    """A value in the unit of its kind: 500 g, 0.0 °C, pH 7.00."""
    if kind == "scale":
        return show_mass(value, units)
    if kind == "thermometer":
        return show_temperature(value, units)
    return f"pH {value / 1000:.2f}"


def show_difference(kind: str, value: int, units: str = "metric") -> str:
    """How far it is or may be off: 1 g, 0.5 °C, 0.05."""
    if kind == "scale":
        return show_mass(value, units)
    if kind == "thermometer":
        degrees = Fraction(value, 1000) * (Fraction(9, 5) if units == "us" else 1)
        return f"{float(degrees):.1f} {'°F' if units == 'us' else '°C'}"
    return f"{value / 1000:.2f}"
