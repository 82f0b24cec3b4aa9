"""The levels of a label: the name, what it is and weighs, the law's text; and what no line tears apart."""

import re
from dataclasses import replace

from ledger.documents.kit.fitting import Picture, Wanted
from ledger.documents.kit.fonts import BOLD, REGULAR, size_for_figures, size_for_x_height
from ledger.documents.kit.layout import LabelLayout

Field = tuple[Wanted | Picture, ...]


def small(
    layout: LabelLayout, field: str, text: str, face: str = REGULAR, *, names: bool = False, least_mm: float = 0.0
) -> Field:
    """A field of the law's text, its letters no lower than a law asks."""
    law = max(size_for_x_height(layout.law_min_x_height_mm), size_for_letters(text, least_mm))
    return (Wanted(field, text, face, max(layout.law_max_pt, law), law, names),) if text else ()


def shown(
    layout: LabelLayout, field: str, text: str, face: str = REGULAR, least_pt: float = 0.0, *, clear: bool = False
) -> tuple[Wanted, ...]:
    """What it is, what it weighs: the middle of three levels, no smaller than the law asks."""
    least = max(size_for_x_height(layout.law_min_x_height_mm), least_pt)
    return (Wanted(field, text, face, max(layout.what_pt, least), least, clear=clear),) if text else ()


def size_for_letters(text: str, millimetres: float) -> float:
    """The size, in points, at which a text is so high: by its small letters where it has any, else by its capitals."""
    return size_for_x_height(millimetres) if any(map(str.islower, text)) else size_for_figures(millimetres)


def large(layout: LabelLayout, field: str, text: str, largest: float) -> Field:
    return (Wanted(field, text, BOLD, largest, min(layout.product_min_pt, largest), yields=True),)


def whole(text: str) -> str:
    """A date, code or price that no line tears apart."""
    return text.replace(" ", "\u00a0")


def bound(text: str) -> str:
    """A name in which no line ends with a single letter or an &; they go with the next word."""
    return re.sub(r"(?<=\s)(\w|&) ", "\\1\u00a0", text)


def quantity(text: str) -> str:
    """A figure is not torn from its unit; words before it and brackets behind it may stand on lines of their own."""
    return re.sub(r"(?<=\d) (?!\(|per\b)", "\u00a0", text)


def splitting(field: Field) -> Field:
    """A long text of the law's, which may go on in the next panel."""
    return tuple(replace(one, splits=True) if isinstance(one, Wanted) else one for one in field)
