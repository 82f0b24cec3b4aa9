"""The points looked at before bars are released, and which figures are good."""

from collections.abc import Sequence
from dataclasses import dataclass

from ledger.domain.limits import read_ph
from ledger.domain.quantity import parse_share, show_share
from ledger.errors import BadInput

CHECKS = ("pH", "look", "smell", "weight")  # asked where a recipe names none; common practice, no source
FREE_ALKALI_PPM = 500  # free caustic alkali of a toilet soap, as NaOH: IS 2888:2004, from memory, unverified
GOOD = ("good", "yes", "y", "ok")


@dataclass(frozen=True)
class Check:
    """One point as it was looked at: what was found, and whether that is good."""

    what: str
    found: str
    good: bool


def read_check(what: str, typed: str, *, ph_at_most: int) -> Check:
    """A point as typed: 'good', a figure, words of what was found, or '!' before what is not good.

    A pH above its limit (thousandths) and free alkali above 0.05 % are not good whatever is typed. Raises BadInput
    for a pH or free alkali without a figure, and for a pH below 9 that does not say how it was measured.
    """
    words = typed.strip()
    bad = words.startswith("!")
    words = words.lstrip("! ").strip()
    if not words:
        raise BadInput(f"What was found of the {what}? Write good, or what is wrong behind an exclamation mark.")
    if what == "pH":
        return _acid(words, bad, ph_at_most)
    if what == "free alkali":
        ppm = parse_share(words.partition(";")[0], what="the free alkali")
        limit = f"; over {show_share(FREE_ALKALI_PPM, 2)} as NaOH" if ppm > FREE_ALKALI_PPM else ""
        return Check(what, f"{words}{limit}", not bad and not limit)
    return Check(what, "good" if words.casefold() in GOOD else words, not bad)


def _acid(words: str, bad: bool, at_most: int) -> Check:
    acid, _ = read_ph(words)
    over = f"; over {at_most / 1000:.1f}" if acid > at_most else ""
    return Check("pH", f"{words}{over}", not bad and not over)


def missing(wanted: Sequence[str], checks: Sequence[Check]) -> list[str]:
    """What of the checklist nobody looked at."""
    known = {one.what for one in checks}
    return [one for one in wanted if one not in known]
