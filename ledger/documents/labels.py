"""A sheet of labels."""

import io
from dataclasses import dataclass

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.fitting import Room, SetLine, Wanted, fit
from ledger.documents.fonts import BOLD, MEDIUM, REGULAR, register, size_for_figures, size_for_x_height
from ledger.documents.layout import PAPER_MM, LabelLayout, Panel, SheetLayout, larger_layouts
from ledger.documents.page import GREY
from ledger.errors import BadInput, Refused
from ledger.views.label import LabelText

GAP = 1.2 * mm
_MARK = 2.5 * mm  # how long a mark is beside the sheet of labels


@dataclass(frozen=True)
class Placed:
    """One panel with its lines as they are set; x and y from the label's left and top, in points."""

    x: float
    y: float
    lines: tuple[SetLine, ...]


def set_label(view: LabelText, layout: LabelLayout) -> tuple[Placed, ...]:
    """Fit every panel of one label. Raises Refused for what does not fit or cannot be printed."""
    register()
    texts = _texts(view, layout)
    if view.draft:
        texts["product"] = (
            Wanted("draft", "DRAFT, not for sale", BOLD, layout.law_max_pt, layout.law_max_pt),
            *texts["product"],
        )
    rooms = [_room(panel, texts) for panel in layout.panels]
    larger = larger_layouts(layout)
    remedy = (
        f"Take a larger layout (--layout {' or '.join(larger)}), or set it on a card that goes with the bar."
        if larger
        else "Make a larger layout of your own, or set it on a card that goes with the bar."
    )
    filled = fit(rooms, gap=GAP, remedy=remedy)
    return tuple(
        Placed(panel.x_mm * mm, panel.y_mm * mm, lines) for panel, lines in zip(layout.panels, filled, strict=True)
    )


def _texts(view: LabelText, layout: LabelLayout) -> dict[str, tuple[Wanted, ...]]:
    """Every field in its level: the name; what it is and what it weighs; the law's text."""
    law = size_for_x_height(layout.law_min_x_height_mm)
    figures = size_for_figures(view.figure_height_mm or 3.1)
    what = max(layout.what_pt, figures)

    def small(field: str, text: str, face: str = REGULAR) -> tuple[Wanted, ...]:
        return (Wanted(field, text, face, layout.law_max_pt, law),) if text else ()

    net = view.net_quantity.replace(" ", "\u00a0").replace("\u00a0(", " (")  # a figure is not torn from its unit
    until = "\u00a0".join((view.best_before or "").rsplit(" ", 1))
    return {
        "product": (Wanted("product", view.product, BOLD, layout.product_pt, layout.product_min_pt),),
        "function": (Wanted("function", view.function, REGULAR, what, max(law, figures)),),
        "net_quantity": (Wanted("net_quantity", net, MEDIUM, what, max(law, figures)),),
        "ingredients": small("ingredients", f"{view.ingredients_heading}: {view.ingredients}"),
        "precautions": small("precautions", " ".join(view.precautions)),
        "best_before": small("best_before", until),
        "responsible": small("responsible", f"{view.responsible_name}, {view.responsible_address}"),
        "batch_code": small("batch_code", f"Batch\u00a0{view.batch_code}", BOLD),
    }


def _room(panel: Panel, texts: dict[str, tuple[Wanted, ...]]) -> Room:
    top, foot = (tuple(one for field in fields for one in texts[field]) for fields in (panel.fields, panel.foot_fields))
    return Room(panel.name, panel.width_mm * mm, panel.height_mm * mm, top, foot)


def draw_labels(view: LabelText, layout: LabelLayout, sheet: SheetLayout, *, count: int, start: int = 1) -> bytes:
    """So many labels on sheets, beginning at a position of the first.

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
        if sheet.cut_marks and (index == 0 or position == 0):
            _marks(canvas, layout, sheet, high)
        row, column = divmod(position, sheet.columns)
        left = (sheet.left_mm + column * sheet.pitch_x_mm + (sheet.width_mm - layout.width_mm) / 2) * mm
        top = high - (sheet.top_mm + row * sheet.pitch_y_mm + (sheet.height_mm - layout.height_mm) / 2) * mm
        _one(canvas, placed, left, top)
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def _marks(canvas: Canvas, layout: LabelLayout, sheet: SheetLayout, high: float) -> None:
    """Marks to cut along, and dashed ones to fold at, all outside the labels so that none is left on them."""
    inset_x, inset_y = (sheet.width_mm - layout.width_mm) / 2, (sheet.height_mm - layout.height_mm) / 2
    lefts = [sheet.left_mm + column * sheet.pitch_x_mm + inset_x for column in range(sheet.columns)]
    tops = [sheet.top_mm + row * sheet.pitch_y_mm + inset_y for row in range(sheet.rows)]
    x0, x1 = lefts[0] * mm - mm, (lefts[-1] + layout.width_mm) * mm + mm
    y0, y1 = high - tops[0] * mm + mm, high - (tops[-1] + layout.height_mm) * mm - mm
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.4)
    for top in tops:
        for edge in (top, top + layout.height_mm):
            y = high - edge * mm
            canvas.line(x0 - _MARK, y, x0, y)
            canvas.line(x1, y, x1 + _MARK, y)
    for dash, offsets in (((), (0.0, layout.width_mm)), ((1.2, 1.2), layout.folds_mm)):
        canvas.setDash(*dash)
        for left in lefts:
            for offset in offsets:
                x = (left + offset) * mm
                canvas.line(x, y0, x, y0 + _MARK)
                canvas.line(x, y1 - _MARK, x, y1)
    canvas.setDash()


def _one(canvas: Canvas, placed: tuple[Placed, ...], left: float, top: float) -> None:
    canvas.setFillColor(black)
    for panel in placed:
        for line in panel.lines:
            canvas.setFont(line.face, line.size)
            canvas.drawString(left + panel.x, top - panel.y - line.base, line.text)
