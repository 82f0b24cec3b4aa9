"""Every shipped layout of a bar with one label on it, at printing size, each family on sheets of its own."""

import io
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import BOLD, REGULAR, draw_text, in_one_form
from ledger.documents.kit.layout import FAMILIES, PAPER_MM, LabelLayout, shipped
from ledger.documents.kit.lines import break_lines
from ledger.documents.kit.page import GREY
from ledger.documents.kit.pdf import new_canvas
from ledger.documents.label.choosing import shipped_layout
from ledger.documents.label.labels import about_label, keep_label
from ledger.errors import Refused
from ledger.markets import known_market
from ledger.views.label.label import LabelText

Row = list[tuple[str, LabelLayout]]
_CAPTION = 3.6  # mm over each row
_GAP = 1.2
_SIZE = 7.5


def draw_tries(view: LabelText, *, paper: str, ink: Literal["colour", "black"] = "colour", business: str = "") -> bytes:
    """One label in every shipped layout of a bar, family by family; what does not fit is said there."""
    wide, high = PAPER_MM[paper]
    out = io.BytesIO()
    about = about_label(view, business)._replace(title=f"Labels to choose from, {view.batch_code}")
    canvas = new_canvas(out, (wide * mm, high * mm), in_one_form(about))
    layouts = [(name, replace(shipped_layout(name), ink=ink)) for name in shipped("label")]
    bars = sorted((one for one in layouts if one[1].purpose == "bar"), key=_size)
    families = [_rows([one for one in bars if one[1].family == family], wide) for family in FAMILIES]
    for rows in _closed_up([page for family in families for page in _pages(family, high)], high):
        top = apart = (high - sum(map(_row_tall, rows))) / (len(rows) + 1)
        for row in rows:
            left = (wide - sum(one.width_mm + _GAP for _, one in row) + _GAP) / 2
            for name, layout in row:
                _draw(canvas, view, name, layout, left, high - top - _CAPTION)
                left += layout.width_mm + _GAP
            top += _row_tall(row) + apart
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _size(one: tuple[str, LabelLayout]) -> tuple[float, float]:
    """The widest first, and of those the highest, so that those of a row are as high as each other."""
    return -one[1].width_mm, -one[1].height_mm


def _pages(rows: Sequence[Row], high: float) -> list[list[Row]]:
    """The rows on as few sheets as they go on in their order."""
    pages: list[list[Row]] = []
    for row in rows:
        if pages and sum(map(_row_tall, (*pages[-1], row))) <= high:
            pages[-1].append(row)
        else:
            pages.append([row])
    return pages


def _closed_up(pages: list[list[Row]], high: float) -> list[list[Row]]:
    """The same with what stands on the last sheet put onto an earlier one that has the room."""
    *before, last = pages
    for one in before:
        if sum(map(_row_tall, (*one, *last))) <= high:
            one += last
            return before
    return pages


def _row_tall(row: Row) -> float:
    return _CAPTION + max(_tall(one) for _, one in row)


def _rows(layouts: Row, wide: float) -> list[Row]:
    """The layouts in rows as wide as the paper."""
    rows: list[Row] = []
    for one in layouts:
        if rows and sum(other.width_mm + _GAP for _, other in rows[-1]) + one[1].width_mm <= wide:
            rows[-1].append(one)
        else:
            rows.append([one])
    return rows


def _on(view: LabelText, layout: LabelLayout) -> LabelText:
    """The label as its law has it set on the pack that a layout is for."""
    law, front = known_market(view.market), layout.pack
    if law is None or front is None:
        return view
    high = law.figure_height(view.net_mg, front.cm2)
    return replace(view, figure_height_mm=high, lettering=law.lettering.on(front.cm2))


def _blank(layout: LabelLayout) -> float:
    """What is folded over at head and foot, and left out here."""
    return layout.folds_y_mm[0] if layout.folds_y_mm else 0.0


def _tall(layout: LabelLayout) -> float:
    return layout.height_mm - 2 * _blank(layout)


def _draw(canvas: Canvas, view: LabelText, name: str, layout: LabelLayout, left: float, top: float) -> None:
    """One label with its name over it and its outline; `top` in mm from the foot of the paper."""
    draw_text(canvas, left * mm, (top + 0.8) * mm, name, BOLD, _SIZE)
    try:
        keep_label(canvas, name, _on(view, layout), layout, marked=True)
    except Refused as error:
        reason = str(error).split(" even at")[0] + "."
        lines = break_lines(reason, REGULAR, _SIZE, layout.width_mm * mm) or [reason[:30]]
        for index, line in enumerate(lines, 1):
            draw_text(canvas, left * mm, top * mm - index * 1.25 * _SIZE, line, REGULAR, _SIZE)
        return
    canvas.saveState()
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.3)
    canvas.rect(left * mm, (top - _tall(layout)) * mm, layout.width_mm * mm, _tall(layout) * mm)
    ends = [top - cut + _blank(layout) for cut in layout.cuts_y_mm]
    for cut in ends:
        canvas.line(left * mm, cut * mm, (left + layout.width_mm) * mm, cut * mm)
    canvas.setDash(1.2, 1.8)
    for fold in layout.folds_mm:
        canvas.line((left + fold) * mm, max(top - _tall(layout), *ends, 0.0) * mm, (left + fold) * mm, top * mm)
    canvas.translate(left * mm, (top - layout.height_mm + _blank(layout)) * mm)
    canvas.setDash()
    canvas.doForm(name)
    canvas.restoreState()
