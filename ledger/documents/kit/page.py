"""The page every document is set on: head, foot, page x of y, one typeface in three sizes, hairlines."""

import io
import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from reportlab.lib.colors import Color, black
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageTemplate, Paragraph, TableStyle

from ledger.documents.kit.fonts import BOLD, REGULAR, cut_off, draw_text, printable, register, runs, width
from ledger.documents.kit.pdf import LANGUAGE, About, as_file
from ledger.reference.shipped import templates_digest
from ledger.rows.settings import PrintedFrom
from ledger.units.dates import show_moment

PAPERS = {"A4": A4, "Letter": LETTER}
GREY = Color(0.55, 0.55, 0.55)  # for rules only
HAIR = 0.4
MARGIN = 15 * mm
_TOP, _BOTTOM = 21 * mm, 18 * mm
_EDGE = 8 * mm  # nothing is printed nearer to the edge of the paper
_BOX = re.compile(r"\[U\+[0-9A-F]{4,6}\]")
LEADING = 1.25  # a line, in sizes of its type
_RIGHT = 2  # how reportlab writes alignment to the right


@dataclass(frozen=True)
class Type:
    """The three type sizes of one document, in points."""

    large: float
    head: float
    body: float


@dataclass(frozen=True)
class Sheet:
    """What stands on every page of one document."""

    paper: str
    code: str  # batch or recall code, large on the first page and small on every other
    kind: str  # "Worksheet", "Batch record", "Recall report"
    business: str
    printed_from: PrintedFrom
    type: Type
    mark: str | None = None  # DRAFT or EXERCISE, across the head
    language: str = LANGUAGE

    @property
    def width(self) -> float:
        """The width there is between the margins, in points."""
        return float(PAPERS[self.paper][0] - 2 * MARGIN)


class Boxed(Paragraph):
    """A paragraph with a character that the face lacks, given by its number; the foot of its page says so."""

    def draw(self) -> None:
        """Draw it, and leave word for the foot."""
        self.canv.boxed = True
        super().draw()


def escape(text: str, size: float) -> str:
    """Text ready for a paragraph, each part in the face that has it; a number that stands for a sign is set small."""
    return _BOX.sub(
        rf'<font size="{0.7 * size}">\g<0></font>',
        "".join(
            _marked(piece) if face == REGULAR else f'<font name="{face}">{_marked(piece)}</font>'
            for face, piece in runs(printable(text), REGULAR)
        ),
    )


def _marked(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\n", "<br/>")


@cache
def style(size: float, *, bold: bool = False, right: bool = False, leading: float = LEADING) -> ParagraphStyle:
    """A paragraph style in the one typeface."""
    register()
    return ParagraphStyle(
        f"s{size}{bold}{right}",
        fontName=BOLD if bold else REGULAR,
        fontSize=size,
        leading=size * leading,
        alignment=_RIGHT if right else 0,
        textColor=black,
    )


def para(text: str, size: float, *, bold: bool = False, right: bool = False, leading: float = LEADING) -> Paragraph:
    """One paragraph of plain text; a character that no face has stands by its number."""
    return marked_up(escape(text, size), style(size, bold=bold, right=right, leading=leading))


def marked_up(markup: str, look: ParagraphStyle) -> Paragraph:
    """One paragraph of text that is marked up already."""
    return (Boxed if "[U+" in markup else Paragraph)(markup, look)


def plain(*more: tuple[Any, ...]) -> TableStyle:
    """A table without rules and without padding, empty cells in our face too; `more` commands of reportlab's follow."""
    return TableStyle(
        [
            ("FONTNAME", (0, 0), (-1, -1), REGULAR),
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("RIGHTPADDING", (0, 0), (-1, -1), 0),
            ("TOPPADDING", (0, 0), (-1, -1), 0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            *more,
        ]
    )


def build(story: list[Flowable], sheet: Sheet) -> bytes:
    """Set a document and return its bytes; equal input gives equal bytes under one version."""
    return _set(story, sheet)


class _SecondPage(Exception):
    """What was to stand on one page does not."""


def build_on_one_page(story: list[Flowable], sheet: Sheet) -> bytes | None:
    """The same on one page; None where it takes more, of which nothing is set then."""
    try:
        return _set(story, sheet, one_page=True)
    except _SecondPage:
        return None


def _set(story: list[Flowable], sheet: Sheet, *, one_page: bool = False) -> bytes:
    out = io.BytesIO()
    size = PAPERS[sheet.paper]
    about = About(
        f"{sheet.kind} {sheet.code}", sheet.business, f"{sheet.kind}, {_source(sheet.printed_from)}", sheet.language
    )
    document = BaseDocTemplate(out, pagesize=size, **as_file(about))
    frame = Frame(MARGIN, _BOTTOM, size[0] - 2 * MARGIN, size[1] - _TOP - _BOTTOM, 0, 0, 0, 0)

    def begin(_: Canvas, on: BaseDocTemplate) -> None:
        if one_page and on.page > 1:
            raise _SecondPage

    document.addPageTemplates([PageTemplate(frames=[frame], onPage=begin)])

    class Numbered(Canvas):
        """Draws head and foot once the number of pages is known."""

        def __init__(self, *args: Any, **kwargs: Any) -> None:
            super().__init__(*args, **kwargs)
            self._kept: list[dict[str, Any]] = []
            self.boxed = False

        def showPage(self) -> None:
            self._kept.append(dict(self.__dict__))
            self._startPage()
            self.boxed = False

        def save(self) -> None:
            for number, state in enumerate(self._kept, 1):
                self.__dict__.update(state)
                boxed = self.boxed or "[U+" in printable(sheet.business + sheet.code)
                _head_and_foot(self, sheet, number, len(self._kept), boxed=boxed)
                super().showPage()
            super().save()

    document.build(story, canvasmaker=Numbered)
    return out.getvalue()


def _head_and_foot(canvas: Canvas, sheet: Sheet, number: int, pages: int, *, boxed: bool) -> None:
    wide, high = PAPERS[sheet.paper]
    right, body = wide - MARGIN, sheet.type.body
    head_line = high - 17 * mm
    last = _EDGE + 0.25 * body  # the lower line of the foot
    base = last + 1.15 * body
    foot_line = base + 0.75 * body + 1.2 * mm
    canvas.setFillColor(black)
    canvas.setFont(BOLD, body)
    canvas.drawString(MARGIN, head_line + 2.4 * mm, sheet.kind)
    canvas.setFont(REGULAR, body)
    draw_text(canvas, right, head_line + 2.4 * mm, sheet.business, REGULAR, body, right=True)
    if sheet.mark:
        canvas.setFont(BOLD, sheet.type.head)
        canvas.drawCentredString(wide / 2, head_line + 2.4 * mm, sheet.mark)
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(HAIR)
    canvas.line(MARGIN, head_line, right, head_line)
    canvas.line(MARGIN, foot_line, right, foot_line)
    place = f"page {number} of {pages}"
    program = f"soapledger {sheet.printed_from.program} (templates {templates_digest()})"
    rest = f"{_source(sheet.printed_from)}, {program}    {place}"
    free = right - MARGIN - width(rest, REGULAR, body) - body
    draw_text(canvas, MARGIN, base, cut_off(sheet.code, BOLD, body, free), BOLD, body)
    canvas.setFont(REGULAR, body)
    canvas.drawRightString(right, base, rest)
    if sheet.printed_from.seal:
        canvas.drawRightString(right, last, f"seal {sheet.printed_from.seal}")
    if boxed:
        canvas.drawString(MARGIN, last, _BOXED)


_BOXED = "[U+…] stands for a character that no typeface here has, by its number in Unicode."


def _source(printed: PrintedFrom) -> str:
    return f"from entry {printed.entry} of {show_moment(printed.recorded_at)}"
