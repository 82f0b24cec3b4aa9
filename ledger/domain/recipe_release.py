"""Reads what a recipe asks before its bars are released, under [release]."""

from ledger.domain.recipe_file import RecipeFile
from ledger.domain.release_checks import CHECKS, FREE_ALKALI


def read_release_checks(source: RecipeFile) -> tuple[str, ...]:
    """The points to look at, each once. Raises BadInput for anything but a list of words."""
    value = source.one("release").get("checks")
    if value is None:
        return CHECKS
    if not isinstance(value, list) or not all(isinstance(one, str) and one.strip() for one in value):
        raise source.bad("release", 0, 'checks is a list of words, such as checks = ["pH", "look", "smell"].', "checks")
    known = {one.casefold(): one for one in (*CHECKS, FREE_ALKALI)}
    plain = (" ".join(one.split()) for one in value)
    return tuple(dict.fromkeys(known.get(one.casefold(), one) for one in plain))
