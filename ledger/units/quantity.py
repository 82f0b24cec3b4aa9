"""Masses, pieces, shares, temperatures and lengths as people type and read them."""

import re
from collections.abc import Sequence
from fractions import Fraction

from ledger.errors import BadInput
from ledger.units.measures import (
    FLUID_OUNCE_ML,
    LENGTH_UM,
    MASS_MG,
    VOLUME_ML,
    degree_unit,
    norm,
    scale_unit,
    unit_error,
)
from ledger.units.wording import opening
from ledger.units.words import Units

# Spaces part thousands only where they stand before three digits; '1284 500' is two numbers, not one.
_NUMBER = re.compile(r"(?:\d{1,3}(?:[ \u00a0\u202f]\d{3})+|\d+)(?:[.,]\d+)?|\.\d+")
_SPLIT = re.compile(r"(?P<number>[\d.,\s\u00a0\u202f+−/-]*)(?P<unit>.*)", re.DOTALL)
_FRACTION = re.compile(r"(?:(?P<whole>\d+)\s+)?(?P<over>\d+)\s*/\s*(?P<under>\d+)")
_SIGNS = {"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_POUNDS = re.compile(r"([\d.,/\s]+)(?:lbs?|pounds?)[.,]?\s*(?:and\s+)?([\d.,/\s]+)(?:oz|ounces?)[.]?", re.IGNORECASE)
_GROUP = "\u00a0"
# Common practice, no source: far above what one person weighs, counts or is paid, and in milligrams far below
# the largest whole number a ledger file can hold (2 to the 63rd).
_TOO_LARGE = 10**9
_TOO_LONG = 40
# A bench scale that reads 0.1 g (common practice, no source); her own stands in the settings.
SCALE_STEP_MG = 100


def parse_number(text: str, *, what: str = "the number") -> Fraction:
    """A plain number, with a point or a comma before the decimals, exactly.

    Raises BadInput for a negative, unreadable or absurdly large number, and for 1,284, which could be either;
    0,284 could not, since no thousands begin with a zero.
    """
    plain = text.strip()
    if plain.startswith(("-", "−")):
        raise BadInput(f"{opening(what)} cannot be below zero: '{text.strip()}'.")
    if len(plain) > _TOO_LONG or not _NUMBER.fullmatch(plain):
        shown = plain[:_TOO_LONG] or "nothing"
        raise BadInput(f"{opening(what)} cannot be read from '{shown}'; write it like 182.4.")
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", plain):
        first, last = plain.split(",")
        raise BadInput(f"{opening(what)} '{plain}' can be read two ways; write {first}{last} or {first}.{last}.")
    number = Fraction(re.sub(r"\s", "", plain).replace(",", "."))
    if number >= _TOO_LARGE:
        raise BadInput(f"{opening(what)} '{plain}' is too large to be meant; look at the figures again.")
    return number


def _parted(text: str) -> str:
    """What was typed, with each sign of a fraction written out: 1½ is 1 1/2."""
    return "".join(f" {_SIGNS[sign]}" if sign in _SIGNS else sign for sign in text).strip()


def _fraction(text: str, *, what: str) -> Fraction:
    """A number, or a fraction such as 1/2 or 1 1/2, exactly; 11/2, which may be a slip for 1 1/2, raises BadInput."""
    if "/" not in text:
        return parse_number(text, what=what)
    found = _FRACTION.fullmatch(text.strip())
    if not found or len(text) > _TOO_LONG or not 0 < int(found["over"]) < int(found["under"]):
        raise BadInput(
            f"{opening(what)} cannot be read from '{text.strip()[:_TOO_LONG]}'; a fraction is written like 1 1/2, its "
            "upper number the smaller one."
        )
    part = Fraction(int(found["over"]), int(found["under"]))
    return part + parse_number(found["whole"], what=what) if found["whole"] else part


def _split(text: str, *, what: str, example: str) -> tuple[Fraction, str, str]:
    match = _SPLIT.fullmatch(_parted(text))
    assert match is not None  # the pattern takes any text
    unit = match["unit"].strip()
    if not match["number"].strip():
        raise BadInput(f"{opening(what)} cannot be read from '{text.strip()}'; write it like {example}.")
    return _fraction(match["number"], what=what), unit, match["number"].strip()


def _pounds_and_ounces(text: str, *, what: str) -> Fraction | None:
    """Pounds and ounces together, in mg; None for anything else. Raises BadInput for what could be read two ways."""
    found = _POUNDS.fullmatch(_parted(text))
    if not found:
        return None
    pounds, ounces = (_fraction(one, what=what) for one in found.groups())
    if pounds.denominator != 1 or ounces >= 16:
        raise BadInput(
            f"{text.strip()}: 16 ounces are a pound; write whole pounds with ounces below 16, or ounces alone."
        )
    return pounds * MASS_MG["lb"] + ounces * MASS_MG["oz"]


def parse_mass(text: str, *, what: str = "the weight") -> int:
    """A weight in whole milligrams; g, kg, mg, oz or lb must stand behind it. Raises BadInput."""
    if (together := _pounds_and_ounces(text, what=what)) is not None:
        return round(together)
    number, unit, typed = _split(text, what=what, example="182.4 g")
    if norm(unit) in VOLUME_ML:
        raise BadInput(f"{text.strip()} is a volume; weigh it, and write {what} in {', '.join(MASS_MG)}.")
    factor = MASS_MG.get(norm(unit))
    if factor is None:
        raise unit_error(text, typed, unit, list(MASS_MG), what)
    return round(number * factor)


def ounces_typed(text: str, *, what: str = "the weight") -> Fraction | None:
    """The ounces of a weight typed in ounces or pounds, exactly; None for one in grams. Raises BadInput."""
    if (together := _pounds_and_ounces(text, what=what)) is not None:
        return together / MASS_MG["oz"]
    number, unit, _ = _split(text, what=what, example="182.4 g")
    return number * MASS_MG[norm(unit)] / MASS_MG["oz"] if norm(unit) in ("oz", "lb") else None


def with_scale_unit(typed: str, units: Units) -> str:
    """A weight as typed, with the unit of her scale behind a number that stands alone."""
    return f"{typed} {scale_unit(units)}" if typed[-1:].isdigit() else typed


def is_volume(text: str) -> bool:
    """Whether a known unit of volume stands behind what was typed."""
    match = _SPLIT.fullmatch(_parted(text))
    return match is not None and norm(match["unit"]) in VOLUME_ML


def parse_amount(text: str, *, density_mg_per_ml: int | None = None, what: str = "the amount") -> int:
    """A weight, or a volume of something whose density is known, in whole milligrams. Raises BadInput."""
    if (together := _pounds_and_ounces(text, what=what)) is not None:
        return round(together)
    number, unit, typed = _split(text, what=what, example="5 kg")
    factor = MASS_MG.get(norm(unit))
    if factor is not None:
        return round(number * factor)
    volume = VOLUME_ML.get(norm(unit))
    if volume is None:
        raise unit_error(text, typed, unit, [*MASS_MG, "mL", "L", "fl oz"], what)
    if density_mg_per_ml is None:
        raise BadInput(
            f"{text.strip()} is a volume, and the density is not known; write the weight, "
            "or give the material its --density."
        )
    return round(number * volume * density_mg_per_ml)


def parse_volume(text: str, *, what: str = "the volume") -> int:
    """A volume in whole microlitres; mL, cl, L or fl oz must stand behind it. Raises BadInput."""
    number, unit, typed = _split(text, what=what, example="1200 mL")
    factor = VOLUME_ML.get(norm(unit))
    if factor is None:
        raise unit_error(text, typed, unit, ["mL", "L", "cl", "fl oz"], what)
    return round(number * factor * 1000)


def parse_pieces(text: str, *, what: str = "the number") -> int:
    """A whole number of pieces. Raises BadInput."""
    plain = text.strip()
    if not re.fullmatch(r"\d+", plain):
        raise BadInput(f"{opening(what)} is a whole number, such as 10; '{plain}' is not one.")
    return int(parse_number(plain, what=what))


def parse_share(text: str, *, what: str = "the share") -> int:
    """A percentage, with or without its sign, in parts per million. Raises BadInput."""
    number = parse_number(text.strip().removesuffix("%").strip(), what=what)
    return round(number * 10_000)


def parse_temperature(text: str, *, what: str = "the temperature") -> int:
    """A temperature in thousandths of a degree Celsius; C or F must stand behind it. Raises BadInput."""
    plain = text.strip()
    match = re.fullmatch(r"([-−]?)\s*([\d.,]+)\s*°?\s*([cCfF]?)", plain)
    if not match:
        raise BadInput(f"{opening(what)} cannot be read from '{plain}'; write 49 C or 120 F.")
    degrees = parse_number(match[2], what=what) * (-1 if match[1] else 1)
    if not match[3]:
        raise BadInput(f"{plain} degrees of which kind? Write {plain} C or {plain} F.")
    celsius = degrees if match[3] in "cC" else (degrees - 32) * Fraction(5, 9)
    return round(celsius * 1000)


def parse_minutes(text: str, *, what: str = "the minutes") -> int:
    """A length of time in whole minutes; a number alone is in minutes. Raises BadInput."""
    plain = text.strip()
    ending = next((one for one in ("minutes", "minute", "min") if plain.endswith(one)), "")
    return round(parse_number(plain.removesuffix(ending).strip(), what=what))


def parse_ph(text: str, *, what: str = "the pH") -> int:
    """A pH in thousandths, between 0 and 14. Raises BadInput."""
    value = round(parse_number(text.strip().removeprefix("pH").strip(), what=what) * 1000)
    if value > 14_000:
        raise BadInput(f"A pH of {text} cannot be; it lies between 0 and 14.")
    return value


def parse_length(text: str, *, what: str = "the length") -> int:
    """A length in whole micrometres; mm, cm or in must stand behind it. Raises BadInput."""
    number, unit, typed = _split(text, what=what, example="80 mm")
    factor = LENGTH_UM.get(norm(unit))
    if factor is None:
        raise unit_error(text, typed, unit, list(LENGTH_UM), what)
    return round(number * factor)


def _decimal(value: Fraction, decimals: int, *, trim: bool = True) -> str:
    scaled = value * 10**decimals
    whole = (2 * abs(scaled.numerator) + scaled.denominator) // (2 * scaled.denominator)
    digits = f"{whole:0{decimals + 1}d}"
    head, tail = (digits[:-decimals], digits[-decimals:]) if decimals else (digits, "")
    grouped = f"{int(head):,}".replace(",", _GROUP) if len(head) > 3 else head
    tail = tail.rstrip("0") if trim else tail
    sign = "−" if value < 0 and whole else ""
    return f"{sign}{grouped}.{tail}" if tail else f"{sign}{grouped}"


def show_mass(mg: int, units: Units = "metric") -> str:
    """A mass as her scale reads it: 182.4 g, 1 284 g, 12.35 kg; or in ounces and pounds."""
    size = abs(mg)
    if scale_unit(units) == "oz":
        pounds = size >= 5 * MASS_MG["lb"]
        unit = "lb" if pounds else "oz"
        return f"{_decimal(Fraction(mg) / MASS_MG[unit], 2, trim=False)} {unit}"
    if size >= 10_000_000:
        return f"{_decimal(Fraction(mg, 1_000_000), 2, trim=False)} kg"
    return f"{_decimal(Fraction(mg, 1000), 2 if size < 10_000 else 1)} g"


def thousandfold(found_mg: int, expected_mg: int, units: Units = "metric") -> str:
    """What is said behind a weight that is the one expected, to a tenth, but for a factor of a thousand; else nothing.

    A point stands before decimals here and parts thousands elsewhere: 1.284 g may be meant as 1284 g.
    """
    for factor, way in ((Fraction(1000), "less"), (Fraction(1, 1000), "more")):
        meant = found_mg * factor
        if found_mg and abs(meant - expected_mg) * 10 <= expected_mg:
            grams, kilos = (f"{float(meant / one):.10g}" for one in (1000, 1_000_000))
            shown = show_mass(round(meant), units)
            return f", a thousand times {way}; if the scale showed {shown}, type {grams} g or {kilos} kg"
    return ""


def show_masses(masses: Sequence[int], units: Units = "metric") -> tuple[str, list[str]]:
    """The figures of a table in one unit, that of the largest, with equal decimals; a dash for none."""
    largest = max(masses, default=0)
    if scale_unit(units) == "oz":
        unit = "lb" if largest >= 5 * MASS_MG["lb"] else "oz"
    else:
        unit = "kg" if largest >= 10_000_000 else "g"
    decimals = 1 if unit == "g" else 2
    return unit, [_decimal(Fraction(mg) / MASS_MG[unit], decimals, trim=False) if mg else "–" for mg in masses]


def show_share(ppm: int, decimals: int = 1) -> str:
    """A share as a percentage: 5.2 %."""
    return f"{_decimal(Fraction(ppm, 10_000), decimals, trim=False)} %"


def show_temperature(milli_c: int, units: Units = "metric") -> str:
    """A temperature to a tenth of a degree, in the ledger's system."""
    degrees = Fraction(milli_c, 1000) * Fraction(9, 5) + 32 if degree_unit(units) == "°F" else Fraction(milli_c, 1000)
    return f"{_decimal(degrees, 1, trim=False)} {degree_unit(units)}"


def show_degrees(milli_c: int, units: Units = "metric", fahrenheit_decimals: int = 0) -> str:
    """A difference of temperatures: 5.6 °C, or 10 °F."""
    if degree_unit(units) == "°F":
        return f"{milli_c * 9 / 5000:.{fahrenheit_decimals}f} {degree_unit(units)}"
    return f"{milli_c / 1000:.1f} {degree_unit(units)}"


def show_volume(microlitres: int, units: Units = "metric") -> str:
    """A volume: 1 076 mL, or 36.4 fl oz."""
    if scale_unit(units) == "oz":
        return f"{_decimal(Fraction(microlitres, 1000) / FLUID_OUNCE_ML, 1, trim=False)} fl oz"
    return f"{_decimal(Fraction(microlitres, 1000), 0)} mL"


def show_sap(mg_per_kg: int) -> str:
    """A saponification value in mg KOH per g: 190.0."""
    return _decimal(Fraction(mg_per_kg, 1000), 1, trim=False)


WHOLE_PPM = 1_000_000


def whole(text: str) -> str:
    """A quantity, date or number that no line tears apart."""
    return text.replace(" ", "\u00a0")
