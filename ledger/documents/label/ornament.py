"""The ornament of the family "leaf": a sprig and a single leaf, drawn by ourselves as vectors."""

from reportlab.lib.colors import Color
from reportlab.pdfgen.canvas import Canvas

# The leaves of the sprig from the foot of its stem: where on the stem, length, angle from upright, as shares of its
# height; each stands on both sides. The last grows on from the tip.
_PAIRS = ((0.16, 0.30, 62), (0.33, 0.33, 54), (0.50, 0.30, 46), (0.66, 0.24, 38))
_TIP = (0.76, 0.24)
_WIDE = 0.36  # of a leaf, as a share of its length


def leaf(canvas: Canvas, x: float, y: float, long: float, angle: float, ink: Color, ground: Color | None) -> None:
    """A leaf from its stalk, `angle` degrees from upright to the right, its rib left open where there is a ground."""
    canvas.saveState()
    canvas.translate(x, y)
    canvas.rotate(-angle)
    half = _WIDE * long / 2
    path = canvas.beginPath()
    path.moveTo(0, 0)
    path.curveTo(1.25 * half, 0.22 * long, 1.15 * half, 0.66 * long, 0, long)
    path.curveTo(-1.15 * half, 0.66 * long, -1.25 * half, 0.22 * long, 0, 0)
    path.close()
    canvas.setFillColor(ink)
    canvas.drawPath(path, stroke=0, fill=1)
    if ground is not None:
        canvas.setStrokeColor(ground)
        canvas.setLineWidth(0.035 * long)
        canvas.setLineCap(1)
        canvas.line(0, 0.12 * long, 0, 0.78 * long)
    canvas.restoreState()


def sprig(canvas: Canvas, middle: float, foot: float, high: float, ink: Color, ground: Color) -> None:
    """An upright sprig: a stem, four pairs of leaves, one at its tip."""
    canvas.saveState()
    canvas.setStrokeColor(ink)
    canvas.setLineWidth(0.018 * high)
    canvas.setLineCap(1)
    canvas.line(middle, foot + 0.02 * high, middle, foot + 0.80 * high)
    for at, long, angle in _PAIRS:
        for side in (-1, 1):
            leaf(canvas, middle, foot + at * high, long * high, side * angle, ink, ground)
    leaf(canvas, middle, foot + _TIP[0] * high, _TIP[1] * high, 0, ink, ground)
    canvas.restoreState()


def divider(canvas: Canvas, left: float, right: float, y: float, thick: float, ink: Color) -> None:
    """A level rule that parts for two small leaves in its middle."""
    middle, long = (left + right) / 2, min(0.16 * (right - left), 11.0)
    canvas.setStrokeColor(ink)
    canvas.setLineWidth(thick)
    canvas.line(left, y, middle - 1.5 * long, y)
    canvas.line(middle + 1.5 * long, y, right, y)
    for angle, share in ((-72, 1.0), (72, 1.0), (0, 0.62)):
        leaf(canvas, middle, y - 0.18 * long, share * long, angle, ink, None)
