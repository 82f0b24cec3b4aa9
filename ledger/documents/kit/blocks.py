"""What a document is set of: headings, labels with their values, tables, cautions, the code."""

from collections.abc import Sequence

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Spacer, Table

from ledger.documents.kit.page import GREY, HAIR, LEADING, Sheet, para, plain
from ledger.documents.kit.printed_code import QR_QUIET, qr
from ledger.documents.kit.run_on import run_on


def heading(text: str, size: float) -> list[Flowable]:
    """A heading with the space that groups what follows; it never stands alone at the foot of a page."""
    return [CondPageBreak(28 * mm), Spacer(1, 5 * mm), para(text, size, bold=True), Spacer(1, 1 * mm)]


def facts(
    pairs: Sequence[tuple[str, str]], size: float, *, label_width: float, total: float, columns: int = 1
) -> Table:
    """Labels with their values, down each column in turn; empty values are left out."""
    cells = [(para(label, size), para(value, size, bold=True)) for label, value in pairs if value]
    high = -(-len(cells) // columns)
    gap = 6 * mm
    one = (total - gap * (columns - 1)) / columns
    rows = []
    for row in range(high):
        line: list[Flowable | str] = []
        for column in range(columns):
            index = column * high + row
            line += [*(cells[index] if index < len(cells) else ("", "")), ""]
        rows.append(line[:-1])
    widths = ([label_width, one - label_width, gap] * columns)[:-1]
    table = Table(rows, colWidths=widths, hAlign="LEFT")
    table.setStyle(plain(("BOTTOMPADDING", (0, 0), (-1, -1), 1.4)))
    return table


def grid(
    headers: Sequence[str],
    rows: Sequence[Sequence[str]],
    widths: Sequence[float],
    size: float,
    *,
    right: Sequence[int] = (),
    bold: Sequence[int] = (),
    row_height: float = 0,
) -> Table:
    """A table with hairlines between its rows; the head is repeated on every page.

    `row_height` is the least height of a row whose last cell is to be written in by hand. A row higher than a good
    part of a page goes on in the next, which begins with the same word.
    """
    data = [[para(head, size, right=i in right) for i, head in enumerate(headers)]]
    ends = []  # the rows of the table at which one of `rows` ends
    for row in rows:
        for part in run_on(row, widths, size, LEADING):
            cells = [para(cell, size, right=i in right, bold=i in bold) for i, cell in enumerate(part)]
            data.append([*cells[:-1], Spacer(1, row_height)] if row_height else cells)
        ends.append(len(data) - 1)
    table = Table(data, colWidths=list(widths), repeatRows=1, hAlign="LEFT", spaceAfter=1 * mm)
    table.setStyle(
        plain(
            ("RIGHTPADDING", (0, 0), (-2, -1), 7),
            *(("RIGHTPADDING", (i, 0), (i, -1), 12) for i in right if i < len(headers) - 1),
            ("TOPPADDING", (0, 0), (-1, -1), 1.8),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2.4),
            ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
            ("LINEBELOW", (0, 0), (-1, 0), 0.8, black),
            *(
                [("LINEBELOW", (0, 1), (-1, -1), HAIR, GREY)]
                if len(ends) == len(data) - 1
                else [("LINEBELOW", (0, end), (-1, end), HAIR, GREY) for end in ends]
            ),
        )
    )
    return table


def titled(left: list[Flowable], sheet: Sheet, code: str) -> Table:
    """The top of a first page: what the reader asks first, and at the right edge the code as a QR over the seal."""
    side = 21 * mm  # 21 modules; the white around it is its quiet zone of four (ISO/IEC 18004, from memory)
    number, _, signs = sheet.printed_from.seal.partition(":")
    seal = f"seal {number}:\n{signs[:10]}\n{signs[10:20]}\n{signs[20:]}" if signs else ""
    right = [_Qr(code, side), Spacer(1, 4 * mm), para(seal, sheet.type.body)]
    table = Table([[left, right]], colWidths=[sheet.width - side, side])
    table.setStyle(plain(("RIGHTPADDING", (0, 0), (0, 0), 8 * mm), ("TOPPADDING", (1, 0), (1, 0), 1.5 * mm)))
    return table


def caution(texts: Sequence[str], size: float, wide: float, *, leading: float = 1.25) -> list[Flowable]:
    """Cautions with a heavy bar beside them, seen on a mono printer and at arm's length."""
    if not texts:
        return []
    said = [para(text, size, bold=True, leading=leading) for text in texts]
    body = Table([[said]], colWidths=[wide])
    body.setStyle(plain(("LINEBEFORE", (0, 0), (0, -1), 3, black), ("LEFTPADDING", (0, 0), (-1, -1), 8)))
    return [body, Spacer(1, 2.5 * mm)]


class _Qr(Flowable):
    """A QR code of so many points a side; what lies round it is its quiet zone."""

    def __init__(self, text: str, side: float) -> None:
        super().__init__()
        self.code, self.width, self.height = qr(text), side, side

    def draw(self) -> None:
        """Draw its squares; reportlab's own drawing would declare a face that is in no file."""
        x = self.width / (self.code.wide - 2 * QR_QUIET)
        self.canv.setFillColor(black)
        self.code.draw(self.canv, -QR_QUIET * x, -QR_QUIET * x, self.code.high * x)
