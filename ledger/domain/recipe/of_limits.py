"""Reads what a recipe allows under [limits]."""

from functools import partial

from ledger.domain.recipe.file import RecipeFile
from ledger.domain.tools.bounds import LOSS_PPM, PH_AT_MOST, Limits
from ledger.errors import BadInput
from ledger.units.quantity import parse_number, parse_temperature
from ledger.units.toml_reader import TomlPart
from ledger.units.words import Process


def read_limits(source: RecipeFile, process: Process) -> Limits:
    """The limits of a recipe, each with the usual one where it writes none. Raises BadInput."""
    part = source.one("limits")
    loss, acid = part.share("loss_percent"), _acid(part)
    lye, fragrance = _degrees(part, "lye_temperature"), _degrees(part, "fragrance_temperature")
    return Limits(
        apart_milli_c=part.read("lye_fats_apart", _apart),
        lye_milli_c=lye[1],
        lye_least_milli_c=lye[0],
        cook_minutes=part.pair("cook_minutes", "[45, 120]", lambda one: one.whole("cook_minutes")),
        fragrance_milli_c=fragrance[1],
        fragrance_least_milli_c=fragrance[0],
        bar_weight_mg=part.pair("bar_weight", '["95 g", "115 g"]', lambda one: one.weight("bar_weight")),
        ph_thousandths=acid[1],
        ph_least_thousandths=acid[0],
        loss_ppm=LOSS_PPM.get(process, LOSS_PPM["cold"]) if loss is None else loss,
    )


def _degrees(part: TomlPart, key: str) -> tuple[int | None, int | None]:
    """The lowest temperature, where there is one, and the highest: "55 C" or ["40 C", "55 C"]."""

    def read(one: TomlPart) -> int | None:
        return one.read(key, partial(parse_temperature, what=key))

    if isinstance(part.data.get(key), list):
        return part.pair(key, '["40 C", "55 C"]', read) or (None, None)
    return None, read(part)


def _acid(part: TomlPart) -> tuple[int | None, int]:
    """The lowest pH, where there is one, and the highest: pH = 10.5 or pH = [9, 10.5]."""

    def read(one: TomlPart) -> int | None:
        found = one.number("pH", 14)
        return None if found is None else round(found * 1000)

    if isinstance(part.data.get("pH"), list):
        return part.pair("pH", "[9, 10.5]", read) or (None, PH_AT_MOST)
    return None, read(part) or PH_AT_MOST


def _apart(text: str) -> int:
    """A difference of two temperatures in thousandths of a degree Celsius; 10 F apart is 5.6 C apart."""
    key = "lye_fats_apart"
    number, unit = text.rstrip("CFcf°º ").strip(), text.strip()[-1:].upper()
    if unit not in ("C", "F"):
        raise BadInput(f'{key} is a difference with its unit, such as {key} = "5 C" or "10 F".')
    return round(parse_number(number, what=key) * 1000 * (5 if unit == "F" else 9) / 9)
