"""What a label of a jar has beside its text: the status, which no jar on hold can hide, and a line to write on."""

from reportlab.lib.colors import black, white
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import BOLD, FIGURE_HEIGHT, MEDIUM, REGULAR, width


def status(
    canvas: Canvas, left: float, bottom: float, high: float, *, wide: float, words: tuple[str, str], small: float,
    good: bool,
) -> None:  # fmt: skip
    """The status large, what is said of it below; white on a black bar where it is not good."""
    word, below = words
    inset = 0.0 if good else 0.6 * small
    face = MEDIUM if good else BOLD
    if not good:
        canvas.setFillColor(black)
        canvas.rect(left, bottom, wide, high, stroke=0, fill=1)
        canvas.setFillColor(white)
    size = min(0.42 * high * 1000 / FIGURE_HEIGHT, 2.4 * small)
    size *= min(1.0, (wide - 2 * inset) / width(word, face, size))
    capital, under = size * FIGURE_HEIGHT / 1000, small * FIGURE_HEIGHT / 1000
    gap = (high - capital - under) / 3
    canvas.setFont(face, size)
    canvas.drawString(left + inset, bottom + high - gap - capital, word)
    canvas.setFont(REGULAR, small * min(1.0, (wide - 2 * inset) / width(below, REGULAR, small)))
    canvas.drawString(left + inset, bottom + gap, below)
    canvas.setFillColor(black)


def opened(canvas: Canvas, left: float, bottom: float, high: float, *, wide: float, small: float) -> None:
    """A line near the foot of its panel to write the day of opening on."""
    base = bottom + 0.06 * high
    canvas.setFillColor(black)
    canvas.setStrokeColor(black)
    canvas.setFont(REGULAR, small)
    canvas.drawString(left, base + 0.1 * small, "Opened")
    canvas.setLineWidth(0.5)
    canvas.line(left + width("Opened ", REGULAR, small), base, left + wide, base)
