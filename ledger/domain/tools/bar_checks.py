"""The points looked at before bars are released, and which figures are good."""

from collections.abc import Sequence
from typing import NamedTuple

from ledger.domain.tools.limits import read_ph
from ledger.errors import BadInput
from ledger.units.quantity import parse_mass, parse_share, show_share

CHECKS = ("pH", "look", "smell", "weight")  # asked where a recipe names none; common practice, no source
FREE_ALKALI_PPM = 500  # free caustic alkali of a toilet soap, as NaOH: IS 2888:2004, from memory, unverified
FREE_ALKALI = "free alkali"
FIGURES = ("pH", FREE_ALKALI, "weight")  # points that may be answered by a figure
GOOD = ("good", "yes", "y", "ok")
NOT_GOOD = ("not good", "no", "n", "bad")


class Check(NamedTuple):
    """One point as it was looked at: what was found, and whether that is good."""

    what: str
    found: str
    good: bool


def read_check(what: str, typed: str, *, ph_at_most: int, net_mg: int | None = None) -> Check:
    """A point as typed: 'good' or 'not good', each with a note behind a semicolon, '!' before what is not, or a figure.

    A pH above its limit (thousandths), free alkali above 0.05 % and a weight under the net weight (mg) are not good
    whatever is typed. Raises BadInput for words that say neither, for a pH or free alkali without a figure, and for a
    pH below 9 that does not say how it was measured.
    """
    words = typed.strip()
    bad = words.startswith("!")
    words = words.lstrip("! ").strip()
    if not words:
        raise BadInput(f"What was found of the {what}? {_how(what)}")
    if what == "pH":
        return _acid(words, bad, ph_at_most)
    if what == FREE_ALKALI:
        ppm = parse_share(words.partition(";")[0], what="the free alkali")
        limit = f"; over {show_share(FREE_ALKALI_PPM, 2)} as NaOH" if ppm > FREE_ALKALI_PPM else ""
        return Check(what, f"{words}{limit}", not bad and not limit)
    if bad:
        return Check(what, words, False)
    said, _, note = (part.strip() for part in words.partition(";"))
    if said.casefold() in GOOD:
        return Check(what, f"good; {note}" if note else "good", True)
    if said.casefold() in NOT_GOOD:
        return Check(what, note or "not good", False)
    if what == "weight" and net_mg is not None and said[:1].isdigit():
        under = "; under the net weight" if parse_mass(said, what="the weight") < net_mg else ""
        return Check(what, f"{words}{under}", not under)
    raise BadInput(f"'{words}' does not say whether the {what} is good. {_how(what)}")


def _how(what: str) -> str:
    if what in ("pH", FREE_ALKALI):
        return f"Write the figure, then how: '{'9.6; 1 % in water' if what == 'pH' else '0.03 %; titrated'}'."
    return "Write good or no, and a note behind it if there is one: 'good; a little ash', 'no; cracked'."


def kept_as_good(what: str, found: str, good: bool) -> bool | None:
    """Whether a point on the record is good; None for words of an earlier ledger that say neither.

    They were once kept as good whatever they said.
    """
    said = found.partition(";")[0]
    return good if not good or said == "good" or (what in FIGURES and said[:1].isdigit()) else None


def _acid(words: str, bad: bool, at_most: int) -> Check:
    acid, _ = read_ph(words)
    over = f"; over {at_most / 1000:.1f}" if acid > at_most else ""
    return Check("pH", f"{words}{over}", not bad and not over)


def missing(wanted: Sequence[str], checks: Sequence[Check]) -> list[str]:
    """What of the checklist nobody looked at."""
    known = {one.what for one in checks}
    return [one for one in wanted if one not in known]
