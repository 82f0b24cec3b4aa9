"""The superfat as weighed, on the screen."""

from collections.abc import Sequence

from ledger.cli.kit.show import say, say_wrapped
from ledger.cli.recipe.page_words import likely_words
from ledger.domain.lye.uncertainty import all_low_warning
from ledger.domain.lye.weighed import LyeCheck
from ledger.rows.batch import BatchRow, PlanLineRow
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


def say_ways(check: LyeCheck, batch: BatchRow, lines: Sequence[PlanLineRow]) -> None:
    """Where lye may be left over and is not poured yet: the command that says what can be done about it."""
    low = check.before_addition or check.superfat or check.as_meant
    lye = next((line for line in lines if line.role == "alkali" and line.used), None)
    if low is None or low.likely_low_ppm > 0 or lye is None or batch.poured or batch.yield_lot_id is not None:
        return
    say("What can be done, if lye and fats have not met yet:")
    say(f"  soapledger batch correct {batch.code} '{lye.number}={lye.used / 1000:g} g'")
