"""The one typeface, embedded in every document, and the check that it has every character."""

from collections.abc import Container
from dataclasses import fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any, TypeVar, cast

import fontpkg_ibm_plex_sans_condensed
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from ledger.errors import Refused

View = TypeVar("View")
REGULAR = "PlexCondensed"
MEDIUM = "PlexCondensed-Medium"
BOLD = "PlexCondensed-SemiBold"

# IBM Plex Sans Condensed, SIL Open Font License 1.1, as its package ships it.
_FILES = {
    REGULAR: "IBMPlexSansCondensed-Regular.ttf",
    MEDIUM: "IBMPlexSansCondensed-Medium.ttf",
    BOLD: "IBMPlexSansCondensed-SemiBold.ttf",
}


@cache
def register() -> None:
    """Make the faces known to reportlab, once."""
    folder = Path(fontpkg_ibm_plex_sans_condensed.__file__).parent / "files"
    for name, file in _FILES.items():
        pdfmetrics.registerFont(TTFont(name, str(folder / file)))
    pdfmetrics.registerFontFamily(REGULAR, normal=REGULAR, bold=BOLD, italic=REGULAR, boldItalic=BOLD)


def check_glyphs(text: str, field: str) -> str:
    """The text of a label, if the face has all of it; reportlab would draw black boxes and say nothing.

    Raises Refused naming the field and the character.
    """
    register()
    known = pdfmetrics.getFont(REGULAR).face.charToGlyph
    for sign in text:
        if sign not in "\n\t" and ord(sign) not in known:
            raise Refused(
                f"The {field} has the character '{sign}' (U+{ord(sign):04X}), which cannot be printed; "
                "write it another way. Nothing was printed."
            )
    return text


def printable(view: View) -> View:
    """A view with every character the face lacks as its number in Unicode, in brackets: [U+6C34].

    For records and reports, which must be printed whatever a supplier or a customer is called.
    """
    register()
    known = pdfmetrics.getFont(REGULAR).face.charToGlyph
    return cast(View, _boxed(view, known))


def _boxed(value: Any, known: Container[int]) -> Any:
    """A text, or all texts in a tuple, a mapping or a dataclass; what holds none that must change stays itself."""
    if isinstance(value, str):
        signs = (sign if sign in "\n\t" or ord(sign) in known else f"[U+{ord(sign):04X}]" for sign in value)
        return "".join(signs).replace("][U+", "] [U+")  # so that no line ends within one
    if isinstance(value, tuple):
        made = getattr(value, "_make", tuple)  # of a tuple with names, its own kind
        return made(_boxed(one, known) for one in value)
    if isinstance(value, dict):
        return {key: _boxed(one, known) for key, one in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        parts = {field.name: getattr(value, field.name) for field in fields(value)}
        changed = {name: new for name, old in parts.items() if (new := _boxed(old, known)) != old}
        return replace(value, **changed) if changed else value
    return value


def width(text: str, face: str, size: float) -> float:
    """How wide a text is, in points."""
    register()
    return float(pdfmetrics.stringWidth(text, face, size))


# Of the face, in thousandths of its size, read from its OS/2 table (sxHeight, sCapHeight).
X_HEIGHT = 516
FIGURE_HEIGHT = 698


def size_for_x_height(millimetres: float) -> float:
    """The size, in points, at which small letters are so high."""
    return millimetres * 72 / 25.4 * 1000 / X_HEIGHT


def size_for_figures(millimetres: float) -> float:
    """The size, in points, at which figures are so high."""
    return millimetres * 72 / 25.4 * 1000 / FIGURE_HEIGHT
