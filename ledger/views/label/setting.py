"""What a check says of how a label is set: how high its figures are, and in which languages its words."""

from fractions import Fraction

from ledger.domain.label.panel import Front
from ledger.views.label.label import LabelText

_SQUARE_INCH_CM2 = Fraction("6.4516")


def height_words(label: LabelText, front: Front | None) -> tuple[str, str]:
    """How high the figures are at least, by which letter, and the side of the pack that it goes by."""
    if label.figure_height_mm is None:
        return "the side of the pack that bears the front is not known; add --pack", "missing"
    what = "the small letter o" if label.lettering.measured == "letters" else "the figures"
    bold = ", bold" if label.lettering.bold else ""
    found = f"{label.figure_height_mm:g} mm at least for {what}{bold}"
    if front is None:
        return f"{found}, by the net quantity", "found"
    area = f"{float(front.cm2):.4g} cm², {float(front.cm2 / _SQUARE_INCH_CM2):.3g} sq in"
    return f"{found}; the side that bears the front is {front.words} ({area})", "found"


def language_words(label: LabelText) -> tuple[str, str]:
    """The languages of its words, and what is not said in them."""
    if not label.languages:
        return "none is known here for your country; say which with --language", "for a person"
    found = [f"its words are in: {label.languages.replace(' ', ', ')}"]
    if label.words_from and not label.hourglass:
        found.append(f"those for the date: {'; '.join(label.words_from)}")
    if label.hourglass:
        found.append("the date behind the hourglass, since no words for it are known here in one of them")
    if label.untranslated:
        found.append(f"no words for {', '.join(label.untranslated)}; give them in a file of words of your own")
    return "; ".join(found), "for a person" if label.untranslated else "found"
