"""The points looked at before bars are released, and which figures are good."""

from collections.abc import Sequence
from typing import NamedTuple

from ledger.domain.tools.bounds import FREE_ALKALI_PPM
from ledger.domain.tools.limits import read_ph
from ledger.domain.tools.titre import EXAMPLE, free_alkali
from ledger.errors import BadInput
from ledger.units.quantity import parse_mass, show_mass, show_share

CHECKS = ("pH", "look", "smell", "weight")  # asked where a recipe names none; common practice, no source
FREE_ALKALI = "free alkali"
FIGURES = ("pH", FREE_ALKALI, "weight")  # points that are answered by a figure
_TIMES_OFF = 10  # so far from the net weight a figure is another unit, not another bar; common practice, no source
GOOD = ("y", "yes", "good", "ok")
NOT_GOOD = ("n", "no", "not good", "bad")
_EXAMPLES = {
    "pH": "9.6; 1 % in water",
    FREE_ALKALI: f"0.03 %; titrated', or the titre: '{EXAMPLE}",
    "weight": "98.2 g; the mean of five",
}


class Check(NamedTuple):
    """One point as it was looked at: what was found, and whether that is good."""

    what: str
    found: str
    good: bool


def read_check(what: str, typed: str, *, ph: tuple[int, int], net_mg: int | None = None) -> Check:
    """A point as typed: y or n, each with a note behind a semicolon; of a pH, free alkali and weight the figure.

    A pH outside its limits (thousandths, from and to), free alkali above 0.05 % and a weight under the net weight (mg)
    are not good whatever is typed, nor is a figure with '!' before it. Raises BadInput for words that say neither, for
    a point that wants a figure and has none, and for a pH below 9 that does not say how it was measured.
    """
    words = typed.strip()
    bad = words.startswith("!")
    words = words.lstrip("! ").strip()
    if not words:
        raise BadInput(f"What was found of the {what}? {_how(what)}")
    if what == "pH":
        return _acid(words, bad, ph)
    if what == FREE_ALKALI:
        found = free_alkali(words)
        limit = f"; over {show_share(FREE_ALKALI_PPM, 2)} as NaOH" if found.ppm > FREE_ALKALI_PPM else ""
        shown = f"{show_share(found.ppm, 3)}; {words}" if found.titre == words else words
        return Check(what, f"{shown}{limit}", not bad and not limit)
    if what == "weight":
        return _weight(words, bad, net_mg)
    if bad:
        return Check(what, words, False)
    said, _, note = (part.strip() for part in words.partition(";"))
    if said.casefold() in GOOD:
        return Check(what, f"good; {note}" if note else "good", True)
    if said.casefold() in NOT_GOOD:
        return Check(what, note or "not good", False)
    raise BadInput(f"'{words}' does not say whether the {what} is good. {_how(what)}")


def _how(what: str) -> str:
    if what in FIGURES:
        return f"Write the figure, then how: '{_EXAMPLES[what]}'."
    return "Write y or n, and a note behind it if there is one: 'y; a little ash', 'n; cracked'."


def kept_as_good(what: str, found: str, good: bool) -> bool | None:
    """Whether a point on the record is good; None for words of an earlier ledger that say neither.

    They were once kept as good whatever they said.
    """
    said = found.partition(";")[0]
    return good if not good or said == "good" or (what in FIGURES and said[:1].isdigit()) else None


def _weight(words: str, bad: bool, net_mg: int | None) -> Check:
    said = words.partition(";")[0].strip()
    if not said[:1].isdigit():
        raise BadInput(f"'{words}' is no weight. {_how('weight')}")
    mass = parse_mass(said, what="the weight")
    if net_mg is not None and not net_mg <= _TIMES_OFF * mass <= _TIMES_OFF**2 * net_mg:
        raise BadInput(
            f"A weight of {said} cannot be that of a bar of {show_mass(net_mg)}; look at the number and the unit."
        )
    under = net_mg is not None and mass < net_mg
    found = f"{words}; under the net weight" if under else words
    return Check("weight", found, not bad and not under)


def _acid(words: str, bad: bool, limits: tuple[int, int]) -> Check:
    (acid, _), (least, most) = read_ph(words), limits
    off = f"; over {most / 1000:.1f}" if acid > most else f"; under {least / 1000:.1f}" if acid < least else ""
    return Check("pH", f"{words}{off}", not bad and not off)


def missing(wanted: Sequence[str], checks: Sequence[Check]) -> list[str]:
    """What of the checklist nobody looked at."""
    known = {one.what for one in checks}
    return [one for one in wanted if one not in known]
