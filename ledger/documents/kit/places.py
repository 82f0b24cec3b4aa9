"""The places on a sheet: marks to cut and fold along, and a test sheet for printers that feed askew."""

import io

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import BOLD, REGULAR, width
from ledger.documents.kit.layout import LabelLayout
from ledger.documents.kit.page import GREY
from ledger.documents.kit.pdf import About, new_canvas
from ledger.documents.kit.ruler import draw_ruler, rule
from ledger.documents.kit.sheets import ROLL, SheetLayout
from ledger.errors import BadInput

Nudge = tuple[float, float]
MOST_NUDGE_MM = 5.0
_MARK = 2.5 * mm  # how long a mark is beside the sheet of labels
_OFF = mm  # how far it stays off


def check_nudge(nudge_mm: Nudge) -> Nudge:
    """The nudge, right and down, if it is no more than 5 mm each way. Raises BadInput."""
    for millimetres, way in zip(nudge_mm, ("right", "down"), strict=True):
        if not -MOST_NUDGE_MM <= millimetres <= MOST_NUDGE_MM:
            raise BadInput(
                f"A nudge of {millimetres:g} mm {way} is more than {MOST_NUDGE_MM:g} mm; check how the paper lies, or "
                "choose another sheet. Left and up are written with a minus."
            )
    return nudge_mm


def begin_page(canvas: Canvas, nudge_mm: Nudge) -> None:
    """Shift all that follows on this page."""
    if any(nudge_mm):
        canvas.translate(nudge_mm[0] * mm, -nudge_mm[1] * mm)


def draw_marks(canvas: Canvas, layout: LabelLayout, sheet: SheetLayout, high: float) -> None:
    """Marks to cut along, and dashed ones to fold at, all outside the labels so that none is left on them."""
    first = sheet.corner_mm(0, layout.width_mm, layout.height_mm)
    last = sheet.corner_mm(sheet.places - 1, layout.width_mm, layout.height_mm)
    lefts = [first[0] + column * sheet.pitch_x_mm for column in range(sheet.columns)]
    tops = [first[1] + row * sheet.pitch_y_mm for row in range(sheet.rows)]
    x0, x1 = first[0] * mm - _OFF, (last[0] + layout.width_mm) * mm + _OFF
    y0, y1 = high - first[1] * mm + _OFF, high - (last[1] + layout.height_mm) * mm - _OFF
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.4)
    for dash, downs, acrosses in (
        ((), (0.0, *layout.cuts_y_mm, layout.height_mm), (0.0, *layout.cuts_mm, layout.width_mm)),
        ((1.2, 1.2), layout.folds_y_mm, layout.folds_mm),
    ):
        canvas.setDash(*dash)
        for y in (high - (top + down) * mm for top in tops for down in downs):
            canvas.line(x0 - _MARK, y, x0, y)
            canvas.line(x1, y, x1 + _MARK, y)
        for x in ((left + across) * mm for left in lefts for across in acrosses):
            canvas.line(x, y0, x, y0 + _MARK)
            canvas.line(x, y1 - _MARK, x, y1)
    canvas.setDash()


def draw_rounds(canvas: Canvas, layout: LabelLayout) -> None:
    """The circles of one label to cut out; a hairline that the scissors take away."""
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.4)
    for x, y, across in layout.rounds_mm:
        canvas.circle(x * mm, (layout.height_mm - y) * mm, across / 2 * mm)


def draw_test_sheet(sheet: SheetLayout, *, nudge_mm: Nudge = (0.0, 0.0), business: str = "") -> bytes:
    """The outline of every place with its number, and the nudge: to be held against a sheet of labels."""
    check_nudge(nudge_mm)
    wide, high = (side * mm for side in sheet.page_mm())
    out = io.BytesIO()
    about = About(f"Test of {sheet.file}", business, "The outlines of a sheet of labels, to hold against one")
    canvas = new_canvas(out, (wide, high), about)
    if not draw_ruler(canvas, sheet, cut_marks=False) and sheet.paper != ROLL:
        rule(canvas, sheet.paper, 10 * mm, high - (sheet.top_mm + 6) * mm)
    begin_page(canvas, nudge_mm)
    canvas.setLineWidth(0.4)
    ways = zip(nudge_mm, (("right", "left"), ("down", "up")), strict=True)
    said = ", ".join(f"{abs(millimetres):g} mm {way[millimetres < 0]}" for millimetres, way in ways if millimetres)
    said = f"nudged {said}" if said else "not nudged"
    place_wide, place_high = sheet.width_mm * mm, sheet.height_mm * mm
    for position in range(sheet.places):
        left_mm, top_mm = sheet.corner_mm(position, sheet.width_mm, sheet.height_mm)
        left, foot = left_mm * mm, high - top_mm * mm - place_high
        canvas.setStrokeColor(black)
        canvas.rect(left, foot, place_wide, place_high)
        number = min(24.0, 0.45 * place_high)
        middle, base = left + place_wide / 2, foot + place_high / 2
        _centred(canvas, str(position + 1), BOLD, number, middle, base, place_wide)
        _centred(canvas, said, REGULAR, min(8.0, 0.2 * place_high), middle, base - 0.24 * place_high, place_wide)
        if position == 0:
            size = f"{sheet.file}, {sheet.width_mm:g} × {sheet.height_mm:g} mm"
            _centred(
                canvas, size, REGULAR, min(8.0, 0.2 * place_high), middle, base - 0.24 * place_high - 10, place_wide
            )
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def _centred(canvas: Canvas, text: str, face: str, size: float, middle: float, base: float, room: float) -> None:
    """A line in the middle of a place, in type small enough for it."""
    size *= min(1.0, 0.9 * room / width(text, face, size))
    canvas.setFont(face, size)
    canvas.drawCentredString(middle, base, text)
