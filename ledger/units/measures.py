"""The units a quantity is typed in, what each comes to, and what is said of one that is not known."""

import re
from fractions import Fraction

from ledger.errors import BadInput
from ledger.units.words import Units

# NIST SP 811 (2008), appendix B: 1 lb = 453.592 37 g exactly; an ounce is a sixteenth of it;
# 1 US fluid ounce = 29.573 529 562 5 mL exactly; 1 in = 25.4 mm exactly.
MASS_MG = {
    "g": Fraction(1000),
    "mg": Fraction(1),
    "kg": Fraction(1_000_000),
    "oz": Fraction("28349.523125"),
    "lb": Fraction("453592.37"),
}
FLUID_OUNCE_ML = Fraction("29.5735295625")
# NIST Handbook 44, appendix C, US customary measure: a teaspoon is a sixth of a fluid ounce (4.928 92 mL), a
# tablespoon a half (14.786 8 mL), a cup eight (236.588 mL). Metric spoons and cup: common practice, no source.
_SPOONS = {"tsp": FLUID_OUNCE_ML / 6, "tbsp": FLUID_OUNCE_ML / 2, "cup": FLUID_OUNCE_ML * 8}
_METRIC = {"metric tsp": Fraction(5), "metric tbsp": Fraction(15), "metric cup": Fraction(250)}
VOLUME_ML = {
    "ml": Fraction(1), "cl": Fraction(10), "l": Fraction(1000), "fl oz": FLUID_OUNCE_ML, **_SPOONS, **_METRIC,
}  # fmt: skip
_WORDS = (("teaspoons?|tsps", "tsp"), ("tablespoons?|tbsps", "tbsp"), ("cups", "cup"))
LENGTH_UM = {"mm": Fraction(1000), "cm": Fraction(10_000), "in": Fraction(25_400)}
# What people call the units, whole words: 'gr' begins a grain as well, and a unit that is only near is another one.
_MEANT = {
    "mg": ("milligram", "milligramme"), "g": ("gr", "gm", "gram", "gramme"), "oz": ("ounce",), "lb": ("pound",),
    "kg": ("kilo", "kilogram", "kilogramme"), "mL": ("millilitre", "milliliter"), "L": ("ltr", "litre", "liter"),
    "fl oz": ("fluid ounce",), "mm": ("millimetre", "millimeter"), "cm": ("centimetre", "centimeter"),
    "in": ("inch", "inche"),
}  # fmt: skip


SYSTEMS: tuple[Units, ...] = ("metric", "us")  # each with its own degrees


def scale_unit(units: Units) -> str:
    """The unit her scale weighs in: g, or oz."""
    return "oz" if units in ("us", "us C") else "g"


def degree_unit(units: Units) -> str:
    """The degrees of a system of units."""
    return "°F" if units in ("us", "metric F") else "°C"


def weights_of(units: Units) -> Units:
    """The system that her weights are in, with its own degrees."""
    return "us" if scale_unit(units) == "oz" else "metric"


def with_degrees(system: Units, typed: str | None) -> Units:
    """A system of weights with the degrees of her thermometer, F or C; its own where none are said. Raises BadInput."""
    if typed is None:
        return system
    letter = typed.strip().lstrip("°").casefold()
    if letter not in ("f", "c", "fahrenheit", "celsius"):
        raise BadInput(f"'{typed.strip()}' is not a scale of temperatures; write F or C.")
    if letter[0] == degree_unit(system)[-1].casefold():
        return system
    return "metric F" if system == "metric" else "us C"


def norm(unit: str) -> str:
    """A unit as the tables have it; spoons and cups by their whole words too, one or many."""
    plain = re.sub(r"[\s.]+", " ", unit.casefold()).strip()
    for words, short in _WORDS:
        plain = re.sub(rf"\b(?:{words})$", short, plain)
    return plain


def unit_error(text: str, number: str, unit: str, known: list[str], what: str) -> BadInput:
    """What is said of a unit that is not known; another is named only where it is the same one by another name."""
    if not unit:
        return BadInput(f"{number} of what? Write {what} with its unit, such as {number} {known[0]}.")
    listed = f"{', '.join(known[:-1])} or {known[-1]}"
    called = norm(unit).removesuffix("s")
    close = [short for short in known if called in (norm(short), *_MEANT.get(short, ()))]
    # Nothing else: naming any one unit would invite a weight wrong by its factor.
    advice = f"{number} {close[0]} (one of {', '.join(known)})" if close else f"{what} in {listed}"
    return BadInput(f"{text.strip()}: '{unit}' is not a unit known here; write {advice}.")


def typed_otherwise(text: str, units: Units) -> bool:
    """Whether what was typed stands in another unit than the ledger shows: 120 F where it shows degrees Celsius."""
    unit = norm(text.strip().lstrip("+-−0123456789.,/ \u00a0\u202f½⅓⅔¼¾⅛⅜⅝⅞"))
    if unit.lstrip("° ") in ("c", "f"):
        return unit[-1] != degree_unit(units)[-1].casefold()
    ours = ("oz", "lb", "fl oz") if scale_unit(units) == "oz" else ("g", "kg", "mg", "ml", "cl", "l")
    unit = "lb" if unit.startswith("lb") else unit
    return (unit in MASS_MG or unit in VOLUME_ML) and unit not in ours
