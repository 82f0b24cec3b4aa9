"""What a recipe says of its label, and an infusion of its herb."""

from ledger.domain.recipe.file import RecipeFile
from ledger.domain.recipe.recipe import AS_ADDED, AS_SAPONIFIED, EACH_BY_NAME, TOGETHER, Herb, LabelWishes
from ledger.units.colour import read_colour
from ledger.units.gs1 import read_gtin


def read_herb(source: RecipeFile) -> Herb | None:
    """What is declared of the herb; nothing unless the maker says so."""
    infusion = source.one("infusion")
    inci = infusion.maybe_word("declare")
    carried = infusion.share("carried_percent")
    where = infusion.maybe_word("carried_source")
    if inci is None:
        if carried is not None or where is not None:
            raise infusion.bad('say which name is declared: declare = "… EXTRACT".')
        return None
    if carried is not None and where is None:
        raise infusion.bad("carried_source is missing; write where that share stands, in quotes.")
    return Herb(inci.upper(), carried or 0, where or "her own entry")


def read_label(source: RecipeFile) -> LabelWishes:
    """What the maker decided about the label; the usual where nothing is said. Raises BadInput."""
    label = source.one("label")
    plain = LabelWishes()
    sentences = label.each("precautions", 'precautions are a list of sentences; write precautions = ["…"].')
    opened, matters = label.whole("after_opening_months"), label.flag("opening_matters")
    if opened is not None and matters is False:
        raise label.bad(
            "opening does not matter, and has a period all the same; write one of the two.", "opening_matters"
        )
    return LabelWishes(
        declaration=label.choice("declaration", (AS_ADDED, AS_SAPONIFIED)) or plain.declaration,
        fragrance=label.choice("fragrance", (TOGETHER, EACH_BY_NAME)) or plain.fragrance,
        function=label.maybe_word("function") or plain.function,
        precautions=tuple(one.maybe_word("precautions") or "" for one in sentences),
        claims=label.maybe_word("claims"),
        origin=label.maybe_word("origin"),
        after_opening_months=opened,
        opening_matters=matters,
        list_ingredients=label.flag("list_ingredients") or False,
        gtin=label.read("gtin", read_gtin),  # her own, by its check digit; none is ever made up
        line=label.maybe_word("line"),
        use=label.maybe_word("use"),
        colour=label.read("colour", read_colour),
        picture=label.maybe_word("picture"),
    )
