"""What a recipe says of its label, and an infusion of its herb."""

from ledger.domain.gs1 import read_gtin
from ledger.domain.recipe import AS_ADDED, AS_SAPONIFIED, EACH_BY_NAME, TOGETHER, Herb, LabelWishes
from ledger.domain.recipe_file import RecipeFile
from ledger.errors import BadInput


def read_herb(source: RecipeFile) -> Herb | None:
    """What is declared of the herb; nothing unless the maker says so."""
    infusion = source.one("infusion")
    inci = source.maybe_word(infusion, "declare", "infusion")
    carried = source.percent(infusion, "carried_percent", "infusion", 0)
    where = source.maybe_word(infusion, "carried_source", "infusion")
    if inci is None:
        if carried is not None or where is not None:
            raise source.bad("infusion", 0, 'say which name is declared: declare = "… EXTRACT".')
        return None
    if carried is not None and where is None:
        raise source.bad("infusion", 0, "carried_source is missing; write where that share stands, in quotes.")
    return Herb(inci.upper(), carried or 0, where or "her own entry")


def read_label(source: RecipeFile) -> LabelWishes:
    """What the maker decided about the label; the usual where nothing is said. Raises BadInput."""
    label = source.one("label")
    plain = LabelWishes()
    precautions = label.get("precautions", [])
    if not isinstance(precautions, list) or not all(isinstance(one, str) for one in precautions):
        raise source.bad("label", 0, 'precautions are a list of sentences; write precautions = ["…"].', "precautions")
    return LabelWishes(
        declaration=_choice(source, "declaration", (AS_ADDED, AS_SAPONIFIED)) or plain.declaration,
        fragrance=_choice(source, "fragrance", (TOGETHER, EACH_BY_NAME)) or plain.fragrance,
        function=source.maybe_word(label, "function", "label") or plain.function,
        precautions=tuple(" ".join(one.split()) for one in precautions),
        claims=source.maybe_word(label, "claims", "label"),
        origin=source.maybe_word(label, "origin", "label"),
        after_opening_months=source.whole(label, "after_opening_months", "label"),
        gtin=_gtin(source),
    )


def _choice(source: RecipeFile, key: str, choices: tuple[str, ...]) -> str | None:
    value = source.maybe_word(source.one("label"), key, "label")
    if value is not None and value not in choices:
        raise source.bad("label", 0, f"{key} is one of {' or '.join(repr(one) for one in choices)}.", key)
    return value


def _gtin(source: RecipeFile) -> str | None:
    """Her own GTIN, by its check digit; none is ever made up."""
    text = source.maybe_word(source.one("label"), "gtin", "label")
    try:
        return read_gtin(text) if text else None
    except BadInput as error:
        raise source.bad("label", 0, str(error), "gtin") from None
