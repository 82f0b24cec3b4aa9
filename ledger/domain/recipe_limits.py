"""Reads what a recipe allows under [limits]."""

from ledger.domain.limits import APART_MILLI_C, FRAGRANCE_MILLI_C, LOSS_PPM, PH_AT_MOST, Limits
from ledger.domain.quantity import parse_mass, parse_number, parse_temperature
from ledger.domain.recipe_file import RecipeFile
from ledger.errors import BadInput


def read_limits(source: RecipeFile, process: str) -> Limits:
    """The limits of a recipe, each with the usual one where it writes none. Raises BadInput."""
    part = source.one("limits")
    loss, acid = source.percent(part, "loss_percent", "limits", 0), source.number(part, "pH", "limits", 0, 14)
    apart = _apart(source)
    fragrance = _temperature(source, "fragrance_temperature")
    return Limits(
        apart_milli_c=APART_MILLI_C if apart is None else apart,
        lye_milli_c=_temperature(source, "lye_temperature"),
        cook_minutes=_cook(source),
        fragrance_milli_c=FRAGRANCE_MILLI_C if fragrance is None else fragrance,
        bar_weight_mg=_bars(source),
        ph_thousandths=PH_AT_MOST if acid is None else round(acid * 1000),
        loss_ppm=LOSS_PPM.get(process, LOSS_PPM["cold"]) if loss is None else loss,
    )


def _temperature(source: RecipeFile, key: str) -> int | None:
    text = source.maybe_word(source.one("limits"), key, "limits")
    try:
        return parse_temperature(text, what=key) if text else None
    except BadInput as error:
        raise source.bad("limits", 0, str(error), key) from None


def _apart(source: RecipeFile) -> int | None:
    """A difference of two temperatures in thousandths of a degree Celsius; 10 F apart is 5.6 C apart."""
    key = "lye_fats_apart"
    text = source.maybe_word(source.one("limits"), key, "limits")
    if not text:
        return None
    number, unit = text.rstrip("CFcf°º ").strip(), text.strip()[-1:].upper()
    if unit not in ("C", "F"):
        raise source.bad("limits", 0, f'{key} is a difference with its unit, such as {key} = "5.6 C" or "10 F".', key)
    try:
        degrees = parse_number(number, what=key)
    except BadInput as error:
        raise source.bad("limits", 0, str(error), key) from None
    return round(degrees * 1000 * (5 if unit == "F" else 9) / 9)


def _pair(source: RecipeFile, key: str, example: str) -> list[object] | None:
    value = source.one("limits").get(key)
    if value is None:
        return None
    if not isinstance(value, list) or len(value) != 2:
        raise source.bad("limits", 0, f"{key} is a from and a to: {key} = {example}.", key)
    return value


def _cook(source: RecipeFile) -> tuple[int, int] | None:
    example = "[45, 120]"
    pair = _pair(source, "cook_minutes", example)
    if pair is None:
        return None
    low, high = pair
    if not isinstance(low, int) or not isinstance(high, int) or not 0 < low <= high:
        raise source.bad("limits", 0, f"cook_minutes is a from and a to: cook_minutes = {example}.", "cook_minutes")
    return low, high


def _bars(source: RecipeFile) -> tuple[int, int] | None:
    example = '["95 g", "115 g"]'
    pair = _pair(source, "bar_weight", example)
    if pair is None:
        return None
    try:
        low, high = (parse_mass(str(one), what="bar_weight") for one in pair)
    except BadInput as error:
        raise source.bad("limits", 0, str(error), "bar_weight") from None
    if not 0 < low <= high:
        raise source.bad("limits", 0, f"bar_weight is a from and a to: bar_weight = {example}.", "bar_weight")
    return low, high
