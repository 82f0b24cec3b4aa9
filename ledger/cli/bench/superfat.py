"""The superfat as weighed, on the screen."""

from ledger.cli.kit.show import say_wrapped
from ledger.cli.recipe.page_words import likely_words
from ledger.domain.lye.uncertainty import all_low_warning
from ledger.domain.lye.weighed import LyeCheck
from ledger.units.quantity import show_share


def say_superfat(check: LyeCheck) -> None:
    """The superfat that the actual grams and lots give, with how low it may lie."""
    for pot, found in (
        ("in the pot, before the fat held back goes in,", check.before_addition),
        ("", check.superfat),
        ("with what goes in at trace at its target", check.as_meant),
    ):
        if found is not None:
            say_wrapped(
                f"As weighed, from these lots, the superfat {pot + ' ' if pot else ''}is "
                f"{show_share(found.nominal_ppm, 2)}, {likely_words(found)}."
            )
    if warning := all_low_warning(check.before_addition or check.superfat or check.as_meant):
        say_wrapped(warning)
