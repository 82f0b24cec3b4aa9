"""The marks a cosmetic carries, drawn by ourselves as vectors from their description.

Regulation (EC) 1223/2009, Annex VII: 1 the hand with an open book (more is on a leaflet, tag or card),
2 the open jar (period after opening), 3 the hourglass (date of minimum durability). From memory,
unverified: compare them with the Annex before they are relied upon.

Every mark stands in a box of its own height; its width is a fixed share of that. Drawn in black only,
so that nothing is lost on a mono printer or on kraft paper.
"""

from collections.abc import Sequence

from reportlab.lib.colors import black
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from ledger.documents.kit.fonts import BOLD, FIGURE_HEIGHT, size_for_x_height, width

HOURGLASS_WIDE = 0.62
BOOK_WIDE = 1.13
_JAR_WIDE = 0.92
_STROKE = 0.055  # of lines, as a share of the mark's height

Point = tuple[float, float]


class _Pen:
    """Draws in a box one high; x to the right, y up."""

    def __init__(self, canvas: Canvas, left: float, bottom: float, high: float) -> None:
        self.canvas, self.left, self.bottom, self.high = canvas, left, bottom, high
        canvas.setStrokeColor(black)
        canvas.setFillColor(black)
        canvas.setLineWidth(_STROKE * high)
        canvas.setLineCap(1)
        canvas.setLineJoin(1)

    def at(self, point: Point) -> Point:
        """A point of the box on the canvas."""
        return self.left + point[0] * self.high, self.bottom + point[1] * self.high

    def path(self, steps: Sequence[Sequence[Point]], *, close: bool = True) -> PDFPathObject:
        """A path of straight steps (one point) and curves (two controls and an end)."""
        path = self.canvas.beginPath()
        path.moveTo(*self.at(steps[0][0]))
        for step in steps[1:]:
            if len(step) == 1:
                path.lineTo(*self.at(step[0]))
            else:
                path.curveTo(*(n for point in step for n in self.at(point)))
        if close:
            path.close()
        return path

    def line(self, *steps: Sequence[Point]) -> None:
        """An open line."""
        self.canvas.drawPath(self.path(steps, close=False), stroke=1, fill=0)

    def shape(self, *steps: Sequence[Point], fill: int = 0) -> None:
        """A closed outline, filled black or left open."""
        self.canvas.drawPath(self.path(steps), stroke=1, fill=fill)


def hourglass(canvas: Canvas, left: float, bottom: float, high: float) -> None:
    """An hourglass between two bars, sand in both halves."""
    pen = _Pen(canvas, left, bottom, high)
    pen.shape([(0.03, 0.03)], [(0.59, 0.03)], [(0.59, 0.1)], [(0.03, 0.1)], fill=1)
    pen.shape([(0.03, 0.9)], [(0.59, 0.9)], [(0.59, 0.97)], [(0.03, 0.97)], fill=1)
    pen.shape(
        [(0.1, 0.9)],
        [(0.1, 0.66), (0.28, 0.6), (0.28, 0.5)],
        [(0.28, 0.4), (0.1, 0.34), (0.1, 0.1)],
        [(0.52, 0.1)],
        [(0.52, 0.34), (0.34, 0.4), (0.34, 0.5)],
        [(0.34, 0.6), (0.52, 0.66), (0.52, 0.9)],
    )
    pen.shape(
        [(0.2, 0.73)], [(0.25, 0.64), (0.3, 0.62), (0.31, 0.5)], [(0.32, 0.62), (0.37, 0.64), (0.42, 0.73)], fill=1
    )
    pen.shape(
        [(0.16, 0.12)], [(0.18, 0.24), (0.26, 0.26), (0.31, 0.3)], [(0.36, 0.26), (0.44, 0.24), (0.46, 0.12)], fill=1
    )


def months_size(high: float) -> float:
    """The type size of the months, in points: as large as the jar takes, and never below the house minimum."""
    return max(size_for_x_height(1.2), 0.25 * high * 1000 / FIGURE_HEIGHT)


def _inside(months: int, high: float) -> bool:
    """Whether the months stand inside the jar; beside it where the jar is too small."""
    return width(f"{months}M", BOLD, months_size(high)) <= (_JAR_WIDE - 0.2) * high


def jar_wide(months: int, high: float) -> float:
    """How wide the open jar is with its months, in points."""
    beside = 0.0 if _inside(months, high) else 0.12 * high + width(f"{months}M", BOLD, months_size(high))
    return _JAR_WIDE * high + beside


def open_jar(canvas: Canvas, left: float, bottom: float, high: float, months: int) -> None:
    """A cream jar with its lid lifted and tilted above it, and the months it keeps once opened, such as 12M."""
    pen = _Pen(canvas, left, bottom, high)
    # the jar: a round-cornered body under a wide neck
    pen.shape(
        [(0.03, 0.1)],
        [(0.03, 0.05), (0.06, 0.03), (0.1, 0.03)],
        [(0.82, 0.03)],
        [(0.86, 0.03), (0.89, 0.05), (0.89, 0.1)],
        [(0.89, 0.47)],
        [(0.03, 0.47)],
    )
    pen.shape([(0.1, 0.47)], [(0.1, 0.56)], [(0.82, 0.56)], [(0.82, 0.47)])
    # the lid: a flat cap, its left end lifted further than its right
    pen.shape([(0.06, 0.79)], [(0.84, 0.66)], [(0.87, 0.83)], [(0.09, 0.96)], fill=0)
    size, text = months_size(high), f"{months}M"
    canvas.setFont(BOLD, size)
    capital = size * FIGURE_HEIGHT / 1000
    base = bottom + 0.25 * high - capital / 2
    if _inside(months, high):
        canvas.drawCentredString(left + _JAR_WIDE * high / 2, base, text)
    else:
        canvas.drawString(left + (_JAR_WIDE + 0.12) * high, base, text)


def hand_with_book(canvas: Canvas, left: float, bottom: float, high: float) -> None:
    """An open book with lines of print, and a hand that points at its page."""
    pen = _Pen(canvas, left, bottom, high)
    # two pages that bow up from the spine
    spine_top, spine_foot = (0.5, 0.9), (0.5, 0.34)
    pen.shape(
        [spine_foot],
        [(0.4, 0.44), (0.2, 0.44), (0.03, 0.38)],
        [(0.03, 0.92)],
        [(0.2, 0.98), (0.4, 0.98), spine_top],
    )
    pen.shape(
        [spine_foot],
        [(0.6, 0.44), (0.8, 0.44), (0.97, 0.38)],
        [(0.97, 0.92)],
        [(0.8, 0.98), (0.6, 0.98), spine_top],
    )
    for y in (0.78, 0.64, 0.5):
        pen.line([(0.12, y)], [(0.2, y + 0.025), (0.3, y + 0.025), (0.41, y - 0.02)])
    pen.line([(0.59, 0.76)], [(0.7, 0.805), (0.8, 0.805), (0.88, 0.78)])
    # the hand: a finger that points up at the page, the fist below, the cuff
    canvas.setFillGray(1)
    pen.shape(
        [(0.66, 0.24)],
        [(0.66, 0.6)],
        [(0.66, 0.68), (0.78, 0.68), (0.78, 0.6)],
        [(0.78, 0.36)],
        [(1.06, 0.31)],
        [(1.1, 0.29), (1.1, 0.24), (1.08, 0.2)],
        [(1.02, 0.03)],
        [(0.68, 0.03)],
        [(0.52, 0.2)],
        [(0.48, 0.27), (0.55, 0.34), (0.61, 0.29)],
        fill=1,
    )
    canvas.setFillColor(black)
