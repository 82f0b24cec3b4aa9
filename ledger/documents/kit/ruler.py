"""A ruler at the edge of a sheet: a printer that makes the page fit draws the law's text too low, and says nothing."""

from reportlab.lib.colors import black
from reportlab.lib.units import inch, mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import REGULAR
from ledger.documents.kit.sheets import ROLL, SheetLayout

_LEFT = 10 * mm
_OFF = 4.6 * mm  # from the edge of the paper; few printers reach further out (common practice, no source)
_TICK = 1.2 * mm
_TYPE = 6.5
_GAP = 0.3 * mm
_CUT_MARKS = 3.5 * mm  # what the marks to cut along take of the edge


def length_of(paper: str) -> tuple[float, str]:
    """How long the ruler is, in points, and in words: in inches on the paper of those who measure in inches."""
    return (4 * inch, "4 in (101.6 mm)") if paper == "Letter" else (100 * mm, "100 mm")


def draw_ruler(canvas: Canvas, sheet: SheetLayout, *, cut_marks: bool) -> bool:
    """Draw it under the labels, or above them; False where the sheet leaves no edge for it, as labels cut already may.

    It is never moved by a nudge, so that it stays on the paper.
    """
    if sheet.paper == ROLL:
        return False
    high = sheet.page_mm()[1]
    under = (high - sheet.top_mm - (sheet.rows - 1) * sheet.pitch_y_mm - sheet.height_mm) * mm
    needed = _OFF + _TICK + _GAP + (_CUT_MARKS if cut_marks else 0.0)
    if under >= needed:
        rule(canvas, sheet.paper, _LEFT, _OFF)
        return True
    if sheet.top_mm * mm >= needed:
        rule(canvas, sheet.paper, _LEFT, high * mm - _OFF - _TICK)
        return True
    return False


def rule(canvas: Canvas, paper: str, left: float, base: float) -> None:
    """The line with its ends and its length in words, from a place on the page."""
    long, words = length_of(paper)
    canvas.setStrokeColor(black)
    canvas.setFillColor(black)
    canvas.setLineWidth(0.5)
    canvas.line(left, base, left + long, base)
    for part in range(5):
        x = left + part * long / 4
        canvas.line(x, base, x, base + (_TICK if part in (0, 4) else _TICK / 2))
    canvas.setFont(REGULAR, _TYPE)
    said = f"This line is {words} long. If yours is not, print again at actual size (100 %), not fitted to the page."
    canvas.drawString(left + long + 2 * mm, base, said)
