"""The typeface, embedded in every document, the second one for what it lacks, and what stands for what both lack."""

from collections.abc import Callable, Container
from dataclasses import fields, is_dataclass, replace
from functools import cache, lru_cache
from importlib.util import find_spec
from itertools import groupby
from pathlib import Path
from typing import Any, TypeVar, cast
from unicodedata import bidirectional, combining

import fontpkg_ibm_plex_sans_condensed
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from ledger.errors import Refused
from ledger.units.signs import composed, masked

View = TypeVar("View")
REGULAR = "PlexCondensed"
MEDIUM = "PlexCondensed-Medium"
BOLD = "PlexCondensed-SemiBold"
HEAVY = "PlexCondensed-Bold"  # where a law asks for bold letters; nothing else is set in it
FALLBACK = "MicroHei"  # WenQuanYi Micro Hei, Apache License 2.0: Chinese, Japanese, Korean, Cyrillic, Greek

# IBM Plex Sans Condensed, SIL Open Font License 1.1, as its package ships it.
_FILES = {
    REGULAR: "IBMPlexSansCondensed-Regular.ttf",
    MEDIUM: "IBMPlexSansCondensed-Medium.ttf",
    BOLD: "IBMPlexSansCondensed-SemiBold.ttf",
    HEAVY: "IBMPlexSansCondensed-Bold.ttf",
}


# Classes of UAX 9 that are set as they come: letters from left to right, figures, signs. Others need shaping.
_LEFT_TO_RIGHT = ("L", "EN", "ES", "ET", "CS", "ON", "WS")


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
        if sign not in "\n\t" and (ord(sign) not in known or masked(sign) != sign):
            raise Refused(
                f"The {field} has the character '{sign}' (U+{ord(sign):04X}), which cannot be printed; "
                "write it another way. Nothing was printed."
            )
    return text


def printable(view: View) -> View:
    """A view with every character that neither face has as its number in Unicode, in brackets: [U+1F9FC].

    For worksheets, sheets, records and reports, which must be printed whatever a supplier or a customer is called.
    """
    return cast(View, _with_texts(view, _boxed))


def in_one_form(view: View) -> View:
    """A view with every accent in one sign with its letter, as the face has it; an older ledger may hold them apart."""
    return cast(View, _with_texts(view, composed))


def _with_texts(value: Any, change: Callable[[str], str]) -> Any:
    """A text, or all texts in a tuple, a mapping or a dataclass; what holds none that must change stays itself."""
    if isinstance(value, str):
        return value if value.isascii() and value.isprintable() else change(value)
    if isinstance(value, tuple):
        made = getattr(value, "_make", tuple)  # of a tuple with names, its own kind
        return made(_with_texts(one, change) for one in value)
    if isinstance(value, dict):
        return {key: _with_texts(one, change) for key, one in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        parts = {field.name: getattr(value, field.name) for field in fields(value)}
        changed = {name: new for name, old in parts.items() if (new := _with_texts(old, change)) != old}
        return replace(value, **changed) if changed else value
    return value


def _boxed(text: str) -> str:
    signs = (sign if sign in "\n\t" or _face_of(sign) else f"[U+{ord(sign):04X}]" for sign in masked(composed(text)))
    return "".join(signs).replace("][U+", "] [U+")  # so that no line ends within one


def unprintable(text: str) -> tuple[str, ...]:
    """The characters that a paper gives by their number, each once."""
    return tuple(dict.fromkeys(sign for sign in composed(text) if sign not in "\n\t" and not _face_of(sign)))


@cache
def _face_of(sign: str) -> str | None:
    """The face that has a character; None for neither. A mark that is set over a letter is left to its own face."""
    register()
    if ord(sign) in pdfmetrics.getFont(REGULAR).face.charToGlyph:
        return REGULAR
    if combining(sign) or bidirectional(sign) not in _LEFT_TO_RIGHT:
        return None
    return FALLBACK if ord(sign) in _of_fallback() else None


@cache
def _of_fallback() -> Container[int]:
    """The characters of the second face, loaded where the first lacks something: it takes 150 ms.

    Its package is looked up and not run; where it was taken out, the numbers do alone.
    """
    package = find_spec("paperang_p2_fonts_cjk")
    if package is None or package.origin is None:
        return ()
    path = Path(package.origin).parent / "fonts" / "wqy-microhei.ttc"
    pdfmetrics.registerFont(TTFont(FALLBACK, str(path), subfontIndex=0))
    return cast(Container[int], pdfmetrics.getFont(FALLBACK).face.charToGlyph)


def runs(text: str, face: str) -> list[tuple[str, str]]:
    """A printable text in pieces, each with the face that has it: `face`, or the second one."""
    if text.isascii():
        return [(face, text)]
    pieces = groupby(text, lambda sign: FALLBACK if _face_of(sign) == FALLBACK else face)
    return [(name, "".join(signs)) for name, signs in pieces]


@lru_cache(maxsize=4096)  # a label is tried size by size, and the words of it are few
def width(text: str, face: str, size: float) -> float:
    """How wide a text is, in points."""
    register()
    return float(sum(pdfmetrics.stringWidth(piece, name, size) for name, piece in runs(text, face)))


def draw_text(canvas: Any, x: float, y: float, text: str, face: str, size: float, *, right: bool = False) -> None:
    """One line of text from `x`, or up to it, in the faces that have it."""
    text = printable(text)
    x -= width(text, face, size) if right else 0
    for name, piece in runs(text, face):
        canvas.setFont(name, size)
        canvas.drawString(x, y, piece)
        x += pdfmetrics.stringWidth(piece, name, size)
    canvas.setFont(face, size)


# Of the face, in thousandths of its size, read from its OS/2 table (sxHeight, sCapHeight); the bolder are no lower.
X_HEIGHT = 516
FIGURE_HEIGHT = 698


def size_for_x_height(millimetres: float) -> float:
    """The size, in points, at which small letters are so high."""
    return millimetres * 72 / 25.4 * 1000 / X_HEIGHT


def size_for_figures(millimetres: float) -> float:
    """The size, in points, at which figures are so high."""
    return millimetres * 72 / 25.4 * 1000 / FIGURE_HEIGHT


def cut_off(text: str, face: str, size: float, room: float) -> str:
    """A text shortened to so many points, with an ellipsis; where it stands whole is the caller's business."""
    if width(text, face, size) <= room:
        return text
    while text and width(f"{text}…", face, size) > room:
        text = text[:-1]
    return f"{text.rstrip(' ,')}…"
