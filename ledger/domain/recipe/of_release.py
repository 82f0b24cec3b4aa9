"""Reads what a recipe asks before its bars are released, under [release]."""

from ledger.domain.recipe.file import RecipeFile
from ledger.domain.tools.bar_checks import CHECKS, FREE_ALKALI
from ledger.units.signs import folded


def read_release_checks(source: RecipeFile) -> tuple[str, ...]:
    """The points to look at, each once. Raises BadInput for anything but a list of words."""
    found = source.one("release").listed("checks", '["pH", "look", "smell"]')
    if found is None:
        return CHECKS
    known = {folded(one): one for one in (*CHECKS, FREE_ALKALI)}
    return tuple(dict.fromkeys(known.get(folded(one), one) for one in found))
