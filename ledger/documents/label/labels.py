"""A sheet of labels, tickets or cards."""

import io
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from math import inf

from reportlab.lib.colors import HexColor, black
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fitting import LAW, Filled, Near, Room
from ledger.documents.kit.fonts import in_one_form, register
from ledger.documents.kit.layout import LabelLayout, Panel, SheetLayout
from ledger.documents.kit.pdf import LANGUAGE, About, new_canvas
from ledger.documents.kit.places import Nudge, begin_page, check_nudge, draw_marks, draw_rounds, draw_test_sheet
from ledger.documents.kit.ruler import draw_ruler
from ledger.documents.label.choosing import larger_layouts, shipped_layout
from ledger.documents.label.face import draw_ground, looks_of
from ledger.documents.label.fields import Printed, RackText, TicketText, fields_of, remedies
from ledger.documents.label.flowing import NoRoomOnFace, fit
from ledger.documents.label.lowest import check_lowest
from ledger.documents.label.stacked import net_of, stacked
from ledger.errors import BadInput, Refused
from ledger.views.label.label import LabelText
from ledger.views.label.lot_label import LotLabel
from ledger.views.label.parcel import ParcelText

__all__ = ["RackText", "TicketText", "draw_labels", "draw_test_sheet", "set_label"]

GAP = 1.2 * mm
_TOUCH = 1e-6  # mm; panels that touch, as reckoned, lie beside each other and not over


def set_label(view: Printed, layout: LabelLayout) -> tuple[LabelLayout, tuple[Filled, ...]]:
    """Fit every panel of one label; lines and marks in points from the left and top of their panel.

    The panels are those of the layout that is given back with them: without the place of a picture where there is
    none, and with the net quantity across the foot of the face where it has no room in its own place.
    Raises Refused for what does not fit or cannot be printed.
    """
    register()
    return _set(view, layout, lambda: remedies(view, layout, _takers(view, layout)))


def _set(
    view: Printed, layout: LabelLayout, known: Callable[[], Mapping[str, str]]
) -> tuple[LabelLayout, tuple[Filled, ...]]:
    form = layout if isinstance(view, LabelText) and view.picture else layout.without_picture()
    try:
        return form, _filled(view, form, dict)
    except NoRoomOnFace:
        net = net_of(fields_of(view, form)["net_quantity"])
        other = stacked(form, net, view.lettering.lowest, GAP) if isinstance(view, LabelText) and net else None
        form = other or form
    except Refused:
        pass  # said below with what to do, which is looked up only then
    return form, _filled(view, form, known)


def _filled(view: Printed, layout: LabelLayout, known: Callable[[], Mapping[str, str]]) -> tuple[Filled, ...]:
    filled = fit(_rooms(view, layout), gap=GAP, remedies=known)
    if isinstance(view, LabelText):
        check_lowest(view, layout, filled, lambda: known().get("", ""))
    return filled


def _takers(view: Printed, layout: LabelLayout) -> list[str]:
    """The larger shipped layouts of the same purpose that do have room for it."""
    found = []
    for name in larger_layouts(layout):
        with suppress(Refused):
            _set(view, shipped_layout(name), dict)
            found.append(name)
    return found


def _rooms(view: Printed, layout: LabelLayout) -> list[Room]:
    """The panels with what goes into them."""
    fields = fields_of(view, layout)
    rooms = []
    for panel in layout.panels:
        top, foot = (tuple(one for name in part for one in fields[name]) for part in (panel.fields, panel.foot_fields))
        wide, high = panel.width_mm * mm, panel.height_mm * mm
        middle = panel.role == "face" and panel.centred
        group = {None: "", "back": LAW, "side": LAW}.get(panel.role, panel.role or "")
        rooms.append(
            Room(panel.name, wide, high, top, foot, panel.centred, panel.right, middle, _near(panel, layout), group)
        )
    return rooms


def _near(panel: Panel, layout: LabelLayout) -> Near:
    """How far the next panel with print in it lies on every side of the same piece, in points."""
    left, right, above, below = inf, inf, inf, inf
    x0, x1, y0, y1 = panel.edges_mm
    for other in layout.panels:
        ox0, ox1, oy0, oy1 = other.edges_mm
        if other is panel or not other.placed or _cut_apart(panel, other, layout):
            continue
        if oy0 < y1 - _TOUCH and y0 < oy1 - _TOUCH:
            left, right = (min(left, x0 - ox1), right) if ox0 < x0 else (left, min(right, ox0 - x1))
        if ox0 < x1 - _TOUCH and x0 < ox1 - _TOUCH:
            above, below = (min(above, y0 - oy1), below) if oy0 < y0 else (above, min(below, oy0 - y1))
    return Near(left * mm, right * mm, above * mm, below * mm)


def _cut_apart(panel: Panel, other: Panel, layout: LabelLayout) -> bool:
    """Whether two panels lie on two sides of a cut."""
    x0, _, y0, _ = panel.edges_mm
    ox0, _, oy0, _ = other.edges_mm
    return any((x0 < cut) != (ox0 < cut) for cut in layout.cuts_mm) or any(
        (y0 < cut) != (oy0 < cut) for cut in layout.cuts_y_mm
    )


def draw_labels(
    view: Printed,
    layout: LabelLayout,
    sheet: SheetLayout,
    *,
    count: int,
    start: int = 1,
    nudge_mm: Nudge = (0.0, 0.0),
    each: Sequence[Printed] = (),
    business: str = "",
) -> bytes:
    """So many labels on sheets, beginning at a position of the first.

    `nudge_mm` shifts the print right and down for a printer that feeds askew; `each` gives every label a text of its
    own; `business` is whose the file says it is. Raises BadInput for a position beyond the sheet or a nudge beyond
    5 mm, Refused for a label larger than its place.
    """
    if not 1 <= start <= sheet.places:
        raise BadInput(f"The sheet has positions 1 to {sheet.places}; {start} is none of them.")
    check_nudge(nudge_mm)
    if layout.width_mm > sheet.width_mm + 0.01 or layout.height_mm > sheet.height_mm + 0.01:
        raise Refused(
            f"The label '{layout.name}' ({layout.width_mm:g} × {layout.height_mm:g} mm) is larger than its place on "
            f"{sheet.file} ({sheet.width_mm:g} × {sheet.height_mm:g} mm); choose another --sheet or --layout."
        )
    views = each or (view,)
    wide, high = (side * mm for side in sheet.page_mm(layout.height_mm))
    out = io.BytesIO()
    canvas = new_canvas(out, (wide, high), in_one_form(about_label(view, business)))
    for number, one in enumerate(views):
        keep_label(canvas, f"label{number}", one, layout, marked=sheet.cut_marks)
    for index in range(len(each) or count):
        position = (start - 1 + index) % sheet.places
        if index and position == 0:
            canvas.showPage()
        if index == 0 or position == 0:
            draw_ruler(canvas, sheet, cut_marks=sheet.cut_marks)
            begin_page(canvas, nudge_mm)
            if sheet.cut_marks:
                draw_marks(canvas, layout, sheet, high)
        left, top = sheet.corner_mm(position, layout.width_mm, layout.height_mm)
        canvas.saveState()
        canvas.translate(left * mm, high - (top + layout.height_mm) * mm)
        canvas.doForm(f"label{index % len(views)}")
        canvas.restoreState()
    canvas.showPage()
    canvas.save()
    return out.getvalue()


def about_label(view: Printed, business: str) -> About:
    """What a file of labels says of itself: the first of two languages is that of the law's text."""
    first = view.languages.split(" ")[0] if isinstance(view, LabelText | TicketText) else ""
    return About(_title(view), business, _subject(view), first or LANGUAGE)


def _title(view: Printed) -> str:
    if isinstance(view, LotLabel):
        return f"Lot labels {view.code}"
    if isinstance(view, ParcelText):
        return f"Parcel, {view.name}"
    if isinstance(view, TicketText):
        return f"Price tickets {view.product}"
    return f"Rack card {view.batch_code}" if isinstance(view, RackText) else f"Labels {view.batch_code} {view.market}"


def _subject(view: Printed) -> str:
    if isinstance(view, LotLabel):
        return f"{view.material}, lot {view.code}"
    if isinstance(view, ParcelText):
        return view.to[0]
    draft = "DRAFT, not for sale: " if isinstance(view, LabelText) and view.draft else ""
    return f"{draft}{view.product}, batch {view.batch_code}" if view.batch_code else view.product


def keep_label(canvas: Canvas, name: str, view: Printed, layout: LabelLayout, *, marked: bool) -> None:
    """Draw one label once, to be shown at every place; its origin is its lower left corner."""
    layout, filled = set_label(view, layout)
    looks = looks_of(view, layout)
    high = layout.height_mm * mm
    canvas.beginForm(name, 0, 0, layout.width_mm * mm, high)
    draw_ground(canvas, looks)
    for panel, print_ in zip(layout.panels, filled, strict=True):
        left, top = panel.x_mm * mm, high - panel.y_mm * mm
        for one in print_.figures:
            canvas.setFillColor(black)
            one.figure.draw(canvas, left + one.x, top - one.top - one.high, one.high)
        canvas.setFillColor(HexColor(looks.ink(panel)))
        for line in print_.lines:
            canvas.setFont(line.face, line.size)
            canvas.drawString(left + line.x, top - line.base, line.text)
    if marked:
        draw_rounds(canvas, layout)
    canvas.endForm()
