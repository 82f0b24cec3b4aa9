"""A sheet of labels."""

import io
from dataclasses import dataclass

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.fitting import SetField, Wanted, fit
from ledger.documents.fonts import BOLD, MEDIUM, REGULAR, register, size_for_figures, size_for_x_height
from ledger.documents.layout import PAPER_MM, LabelLayout, SheetLayout
from ledger.documents.page import GREY
from ledger.errors import BadInput, Refused
from ledger.views.label import LabelText

GAP = 1.2 * mm


@dataclass(frozen=True)
class Placed:
    """One panel with its fields as they are set; x and y from the label's left and top, in points."""

    x: float
    y: float
    fields: tuple[SetField, ...]


def set_label(view: LabelText, layout: LabelLayout) -> tuple[Placed, ...]:
    """Fit every panel of one label. Raises Refused for what does not fit or cannot be printed."""
    register()
    law = size_for_x_height(layout.law_min_x_height_mm)
    figures = size_for_figures(view.figure_height_mm)
    texts = {
        "product": Wanted("product", view.product, BOLD, layout.product_pt, layout.product_min_pt),
        "function": Wanted("function", view.function, REGULAR, layout.law_max_pt, law),
        "net_quantity": Wanted("net_quantity", view.net_quantity, MEDIUM, figures * 1.05, figures),
        "ingredients": Wanted(
            "ingredients", f"{view.ingredients_heading}: {view.ingredients}", REGULAR, layout.law_max_pt, law
        ),
        "best_before": Wanted("best_before", view.best_before or "", REGULAR, layout.law_max_pt, law),
        "responsible": Wanted(
            "responsible", f"{view.responsible_name}, {view.responsible_address}", REGULAR, layout.law_max_pt, law
        ),
        "batch_code": Wanted("batch_code", f"Batch {view.batch_code}", MEDIUM, layout.law_max_pt, law),
    }
    placed = []
    for panel in layout.panels:
        wanted = [texts[field] for field in panel.fields if texts[field].text]
        fields = fit(wanted, panel=panel.name, wide=panel.width_mm * mm, high=panel.height_mm * mm, gap=GAP)
        placed.append(Placed(panel.x_mm * mm, panel.y_mm * mm, fields))
    return tuple(placed)


def draw_labels(view: LabelText, layout: LabelLayout, sheet: SheetLayout, *, count: int, start: int = 1) -> bytes:
    """So many labels on sheets, beginning at a position of the first; cut marks at every label's corners.

    Raises BadInput for a position beyond the sheet, Refused for a label larger than its place.
    """
    if not 1 <= start <= sheet.places:
        raise BadInput(f"The sheet has positions 1 to {sheet.places}; {start} is none of them.")
    if layout.width_mm > sheet.width_mm + 0.01 or layout.height_mm > sheet.height_mm + 0.01:
        raise Refused(
            f"The label '{layout.name}' ({layout.width_mm:g} × {layout.height_mm:g} mm) is larger than its place on "
            f"{sheet.file} ({sheet.width_mm:g} × {sheet.height_mm:g} mm); choose another --sheet or --layout."
        )
    placed = set_label(view, layout)
    wide, high = (side * mm for side in PAPER_MM[sheet.paper])
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(wide, high), invariant=1)
    canvas.setTitle(f"Labels {view.batch_code} {view.market}")
    for index in range(count):
        position = (start - 1 + index) % sheet.places
        if index and position == 0:
            canvas.showPage()
        row, column = divmod(position, sheet.columns)
        left = (sheet.left_mm + column * sheet.pitch_x_mm + (sheet.width_mm - layout.width_mm) / 2) * mm
        top = high - (sheet.top_mm + row * sheet.pitch_y_mm + (sheet.height_mm - layout.height_mm) / 2) * mm
        _marks(canvas, sheet, column, row, high)
        if view.draft:
            _draft(canvas, layout, left, top)  # under the text, which stays readable
        _one(canvas, placed, left, top)
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def _marks(canvas: Canvas, sheet: SheetLayout, column: int, row: int, high: float) -> None:
    """Short grey lines where the place of a label has its corners."""
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.3)
    x0 = (sheet.left_mm + column * sheet.pitch_x_mm) * mm
    y1 = high - (sheet.top_mm + row * sheet.pitch_y_mm) * mm
    x1, y0 = x0 + sheet.width_mm * mm, y1 - sheet.height_mm * mm
    arm = 1.2 * mm
    for x, way_x in ((x0, 1), (x1, -1)):
        for y, way_y in ((y0, 1), (y1, -1)):
            canvas.line(x, y, x + way_x * arm, y)
            canvas.line(x, y, x, y + way_y * arm)


def _one(canvas: Canvas, placed: tuple[Placed, ...], left: float, top: float) -> None:
    canvas.setFillColor(black)
    for panel in placed:
        y = top - panel.y
        for field in panel.fields:
            canvas.setFont(field.face, field.size)
            for line in field.lines:
                y -= field.leading
                canvas.drawString(left + panel.x, y + field.leading - field.size * 0.92, line)
            y -= GAP


def _draft(canvas: Canvas, layout: LabelLayout, left: float, top: float) -> None:
    canvas.saveState()
    canvas.translate(left + layout.width_mm * mm / 2, top - layout.height_mm * mm / 2)
    canvas.rotate(18)
    canvas.setFont(BOLD, min(26, layout.height_mm * 0.55))
    canvas.setFillGray(0.72, 0.55)
    canvas.drawCentredString(0, -8, "DRAFT")
    canvas.restoreState()
