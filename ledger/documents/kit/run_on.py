"""A row of a table that is higher than a good part of a page goes on in the next, which begins with the same word."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.lib.utils import simpleSplit

from ledger.documents.kit.fonts import BOLD
from ledger.documents.kit.lines import units

_HIGH = 90 * mm  # of one row; more than that runs on in another
_GUTTER = 12  # the widest space beside a cell, in points
_SHORT, _FEW = 150, 10  # signs and line ends of a cell that is never so high


def run_on(row: Sequence[str], widths: Sequence[float], size: float, leading: float) -> list[Sequence[str]]:
    """The texts of a row, as those of several rows where a cell of it is too high to be kept together.

    `widths` are those of the columns and `size` that of the type, in points, `leading` a line in sizes.
    """
    if not any(len(text) > _SHORT or text.count("\n") > _FEW for text in row):
        return [row]
    most = int(_HIGH / (size * leading))
    lines = [_lines(text, size, wide - _GUTTER) for text, wide in zip(row, widths, strict=True)]
    high = max(len(cell) for cell in lines)
    if high <= most:
        return [row]
    columns = list(enumerate(zip(row, lines, strict=True)))
    return [
        [_part(text, cell, at, most) or (f"…{row[0]}" if not column else "") for column, (text, cell) in columns]
        for at in range(0, high, most)
    ]


def _lines(text: str, size: float, wide: float) -> list[str]:
    """The lines of a cell; a word that is wider than it, as all of a text without spaces is, breaks between signs."""
    found: list[str] = []
    for line in simpleSplit(text, BOLD, size, wide):
        start, so_far = 0, 0.0
        for at, sign in enumerate(line):
            so_far += units(sign, BOLD) * size / 1000
            if so_far > wide and at > start:
                found.append(line[start:at])
                start, so_far = at, units(sign, BOLD) * size / 1000
        found.append(line[start:])
    return found


def _part(text: str, lines: list[str], at: int, most: int) -> str:
    """What a cell says in the row that begins with its line `at`: all of it in the first, where it fits."""
    if len(lines) <= most:
        return "" if at else text
    return "\n".join(lines[at : at + most])
