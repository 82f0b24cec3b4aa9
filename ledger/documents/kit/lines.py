"""Breaks text into lines, at commas and at spaces, and says how high a line reaches."""

import re
from functools import lru_cache
from unicodedata import combining, normalize

from ledger.documents.kit.fonts import width

# Of a line, as shares of the type size: from its top to its base line, and on to its foot. The second figure
# holds where a capital has an accent (Å reaches 0.997 in the boldest face), or a letter a sign below it (ș 0.265).
_ASCENT, _TALL_ASCENT = 0.92, 1.0
_DESCENT, _DEEP_DESCENT = 0.24, 0.27
_ABOVE, _BELOW = 230, (202, 220)  # combining classes of Unicode: above; attached below, and below


@lru_cache(maxsize=4096)
def reach(text: str) -> tuple[float, float]:
    """How far a text reaches above and below its base line, so that no accent meets the line before it."""
    marked = [(sign, normalize("NFD", sign)[1:]) for sign in text if not sign.isascii()]
    tall = any(sign.isupper() and any(combining(one) == _ABOVE for one in more) for sign, more in marked)
    deep = any(combining(one) in _BELOW for _, more in marked for one in more)
    return _TALL_ASCENT if tall else _ASCENT, _DEEP_DESCENT if deep else _DESCENT


def tears(text: str, face: str, size: float, wide: float) -> bool:
    """Whether a name of a list is wider than the panel at this size."""
    return max(units(name, face) for name in names(text)) * 0.001 * size > wide


def names(text: str) -> list[str]:
    """What stands between commas, each with its comma."""
    return re.split(r"(?<=[,:]) ", text)


@lru_cache(maxsize=4096)
def units(text: str, face: str) -> float:
    """How wide a text is at 1000 points; widths add up, for no pair of letters is kerned."""
    return width(text, face, 1000)


def break_lines(text: str, face: str, size: float, wide: float, *, keep_names: bool = True) -> list[str] | None:
    """Lines no wider than `wide` points, broken at spaces; None when a single word is too wide.

    A name (what stands between commas) is kept whole where one line can hold it; no word is hyphenated.
    """
    scale = 0.001 * size
    space = units(" ", face)
    lines: list[str] = []
    line, reached = "", 0.0
    for name in names(text) if keep_names else (text,):
        one_line = keep_names and units(name, face) * scale <= wide
        for part in [name] if one_line else name.split(" "):
            part_units = units(part, face)
            if line and (reached + space + part_units) * scale <= wide:
                line, reached = f"{line} {part}", reached + space + part_units
                continue
            if part_units * scale > wide:
                return None
            if line:
                lines.append(line)
            line, reached = part, part_units
    lines.append(line)
    return lines
