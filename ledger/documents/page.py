"""The page every document is set on: head, foot, page x of y, one typeface, hairlines."""

import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from reportlab.graphics.barcode.qr import QrCodeWidget
from reportlab.graphics.shapes import Drawing
from reportlab.lib.colors import Color, black
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageTemplate, Paragraph, Spacer, Table, TableStyle

from ledger.documents.fonts import BOLD, REGULAR, check_glyphs, register
from ledger.views.settings import PrintedFrom

PAPERS = {"A4": A4, "Letter": LETTER}
GREY = Color(0.62, 0.62, 0.62)
HAIR = 0.4
MARGIN = 15 * mm


@dataclass(frozen=True)
class Sheet:
    """What stands on every page of one document."""

    paper: str
    code: str  # batch or recall code, large on the first page and small on every other
    kind: str  # "Worksheet", "Batch record", "Recall report"
    business: str
    printed_from: PrintedFrom
    mark: str | None = None  # DRAFT or EXERCISE, across the head

    @property
    def width(self) -> float:
        """The width there is between the margins, in points."""
        return float(PAPERS[self.paper][0] - 2 * MARGIN)


def escape(text: str, field: str = "text") -> str:
    """Text ready for a paragraph; raises Refused for a character the face lacks."""
    plain = check_glyphs(text, field)
    return plain.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def style(size: float, *, bold: bool = False, right: bool = False, leading: float = 1.25) -> ParagraphStyle:
    """A paragraph style in the one typeface."""
    register()
    return ParagraphStyle(
        f"s{size}{bold}{right}",
        fontName=BOLD if bold else REGULAR,
        fontSize=size,
        leading=size * leading,
        alignment=2 if right else 0,
        textColor=black,
    )


def para(text: str, size: float, *, bold: bool = False, right: bool = False) -> Paragraph:
    """One paragraph of plain text."""
    return Paragraph(escape(text).replace("\n", "<br/>"), style(size, bold=bold, right=right))


def heading(text: str, size: float) -> list[Flowable]:
    """A heading with the space that groups what follows."""
    return [Spacer(1, 4.5 * mm), para(text, size, bold=True), Spacer(1, 1.2 * mm)]


def facts(pairs: Sequence[tuple[str, str]], size: float, *, label_width: float, total: float) -> Table:
    """Labels with their values, one line each; empty values are left out."""
    rows = [[para(label, size), para(value, size, bold=True)] for label, value in pairs if value]
    table = Table(rows, colWidths=[label_width, total - label_width], hAlign="LEFT")
    table.setStyle(_tight())
    return table


def _tight() -> TableStyle:
    return TableStyle(
        [
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("RIGHTPADDING", (0, 0), (-1, -1), 4),
            ("TOPPADDING", (0, 0), (-1, -1), 0.8),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 0.8),
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ]
    )


def grid(
    headers: Sequence[str],
    rows: Sequence[Sequence[str]],
    widths: Sequence[float],
    size: float,
    *,
    right: Sequence[int] = (),
    bold: Sequence[int] = (),
) -> Table:
    """A table with hairlines between its rows; the head is repeated on every page."""
    data = [[para(head, size - 0.5, right=i in right) for i, head in enumerate(headers)]]
    data += [[para(cell, size, right=i in right, bold=i in bold) for i, cell in enumerate(row)] for row in rows]
    table = Table(data, colWidths=list(widths), repeatRows=1, hAlign="LEFT")
    table.setStyle(
        TableStyle(
            [
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 5),
                *((("RIGHTPADDING"), (i, 0), (i, -1), 10) for i in right if i < len(headers) - 1),
                ("TOPPADDING", (0, 0), (-1, -1), 1.6),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 2.2),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LINEBELOW", (0, 0), (-1, 0), 0.8, black),
                ("LINEBELOW", (0, 1), (-1, -1), HAIR, GREY),
            ]
        )
    )
    return table


def qr(text: str, side: float) -> Drawing:
    """A QR code of so many points a side, its quiet zone of four modules included (ISO/IEC 18004)."""
    widget = QrCodeWidget(text, barLevel="M", barBorder=4)
    x0, y0, x1, y1 = widget.getBounds()
    drawing = Drawing(side, side, transform=[side / (x1 - x0), 0, 0, side / (y1 - y0), 0, 0])
    drawing.add(widget)
    return drawing


def build(story: list[Flowable], sheet: Sheet) -> bytes:
    """Set a document and return its bytes; equal input gives equal bytes under one version."""
    register()
    out = io.BytesIO()
    size = PAPERS[sheet.paper]
    document = BaseDocTemplate(
        out,
        pagesize=size,
        leftMargin=MARGIN,
        rightMargin=MARGIN,
        topMargin=22 * mm,
        bottomMargin=17 * mm,
        title=f"{sheet.kind} {sheet.code}",
        author=check_glyphs(sheet.business, "business name"),
        invariant=1,
    )
    frame = Frame(MARGIN, 17 * mm, size[0] - 2 * MARGIN, size[1] - 39 * mm, 0, 0, 0, 0)
    document.addPageTemplates([PageTemplate(frames=[frame])])

    class Numbered(Canvas):
        """Draws head and foot once the number of pages is known."""

        def __init__(self, *args: Any, **kwargs: Any) -> None:
            super().__init__(*args, **kwargs)
            self._kept: list[dict[str, Any]] = []

        def showPage(self) -> None:  # reportlab's own name
            self._kept.append(dict(self.__dict__))
            self._startPage()

        def save(self) -> None:
            for number, state in enumerate(self._kept, 1):
                self.__dict__.update(state)
                _head_and_foot(self, sheet, number, len(self._kept))
                super().showPage()
            super().save()

    document.build(story, canvasmaker=Numbered)
    return out.getvalue()


def _head_and_foot(canvas: Canvas, sheet: Sheet, number: int, pages: int) -> None:
    wide, high = PAPERS[sheet.paper]
    canvas.setFillColor(black)
    canvas.setFont(BOLD, 10)
    canvas.drawString(MARGIN, high - 14 * mm, sheet.kind)
    canvas.setFont(REGULAR, 10)
    canvas.drawRightString(wide - MARGIN, high - 14 * mm, check_glyphs(sheet.business, "business name"))
    if sheet.mark:
        canvas.setFont(BOLD, 13)
        canvas.drawCentredString(wide / 2, high - 14.4 * mm, sheet.mark)
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(HAIR)
    canvas.line(MARGIN, high - 17 * mm, wide - MARGIN, high - 17 * mm)
    canvas.line(MARGIN, 13.5 * mm, wide - MARGIN, 13.5 * mm)
    canvas.setFont(BOLD, 8.5)
    canvas.drawString(MARGIN, 9.5 * mm, sheet.code)
    canvas.setFont(REGULAR, 8.5)
    written = sheet.printed_from.recorded_at.replace("T", " ").replace("Z", " UTC")
    canvas.drawCentredString(
        wide / 2,
        9.5 * mm,
        f"from entry {sheet.printed_from.entry} of {written}, soapledger {sheet.printed_from.program}",
    )
    canvas.drawRightString(wide - MARGIN, 9.5 * mm, f"page {number} of {pages}")
