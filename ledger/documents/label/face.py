"""What a label shows beside its words: the product's colour, the rules, the ornament, her picture."""

from dataclasses import dataclass
from math import sqrt

from reportlab.lib.colors import HexColor, black, white
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.layout import LabelLayout, Panel
from ledger.documents.label.ornament import divider, sprig
from ledger.documents.label.picture import draw_picture
from ledger.units.colour import BLACK, WHITE, ink_on
from ledger.views.label.label import LabelText

_HAIR, _HEAVY = 0.6, 2.0  # points
_RING = 0.09  # of the disc round a picture, as a share of its radius
_WINDOW = 1.2  # mm of white round a picture on a block of colour
_ROUND_OFF = 1.6  # mm that a colour keeps off the edge of a round


@dataclass(frozen=True)
class Looks:
    """The colours of one label: that of the product where it has one and the label is not for black alone."""

    colour: str | None
    layout: LabelLayout

    def ink(self, panel: Panel) -> str:
        """Black, or white where a panel stands on a dark block of colour."""
        return ink_on(self.colour) if self.colour and self.on_block(panel) else BLACK

    def on_block(self, panel: Panel) -> bool:
        """Whether a panel stands on a block of colour."""
        left, right, top, foot = panel.edges_mm
        return any(
            x <= left + 0.01 and y <= top + 0.01 and right <= x + wide + 0.01 and foot <= y + high + 0.01
            for x, y, wide, high in self.layout.blocks_mm
        )


def looks_of(view: object, layout: LabelLayout) -> Looks:
    """The colours of a label."""
    return Looks(getattr(view, "colour", None) if layout.ink == "colour" else None, layout)


def draw_ground(canvas: Canvas, looks: Looks) -> None:
    """The blocks of colour and the rules, under what is printed."""
    layout = looks.layout
    high = layout.height_mm * mm
    if looks.colour:
        for left, top, wide, tall in layout.blocks_mm:
            canvas.saveState()
            for x, y, across in layout.rounds_mm:
                if left < x < left + wide and top < y + across / 2 and y - across / 2 < top + tall:
                    path = canvas.beginPath()
                    path.circle(x * mm, high - y * mm, (across / 2 - _ROUND_OFF) * mm)
                    canvas.clipPath(path, stroke=0, fill=0)
            canvas.setFillColor(HexColor(looks.colour))
            canvas.rect(left * mm, high - (top + tall) * mm, wide * mm, tall * mm, stroke=0, fill=1)
            canvas.restoreState()
    thick = _HEAVY if layout.ink == "black" else _HAIR
    for left, top, long in layout.rules_mm:
        over = looks.colour and any(
            x <= left and left + long <= x + wide and y <= top <= y + tall for x, y, wide, tall in layout.blocks_mm
        )
        ink = HexColor(ink_on(looks.colour)) if over and looks.colour else black
        if layout.family == "leaf":
            divider(canvas, left * mm, (left + long) * mm, high - top * mm, thick, ink)
        else:
            canvas.setStrokeColor(ink)
            canvas.setLineWidth(thick)
            canvas.line(left * mm, high - top * mm, (left + long) * mm, high - top * mm)


def draw_place(
    canvas: Canvas, view: LabelText, looks: Looks, panel: Panel, left: float, bottom: float, wide: float, high: float
) -> None:
    """The place for a picture: hers, or our ornament in the family "leaf", on a disc of the product's colour."""
    layout, picture = looks.layout, view.picture
    black_only = layout.ink == "black"
    if layout.family == "plain":
        if picture:
            if looks.colour and looks.on_block(panel):  # hers stands on white, whatever its own ground is
                _window(canvas, looks, panel, left, bottom)
            draw_picture(
                canvas, picture, left, bottom, wide, high, centred=panel.centred, right=panel.right, black=black_only
            )
        return
    across = min(wide, high)
    x, y = left + (wide if panel.centred else across) / 2, bottom + high / 2
    ground = looks.colour or WHITE
    if picture:
        if looks.colour:
            canvas.setFillColor(HexColor(looks.colour))
            canvas.circle(x, y, across / 2, stroke=0, fill=1)
            canvas.setFillColor(white)
            canvas.circle(x, y, (1 - _RING) * across / 2, stroke=0, fill=1)
        side, _ = picture_room(looks, panel)
        draw_picture(canvas, picture, x - side / 2, y - side / 2, side, side, centred=True, black=black_only)
        return
    if looks.colour and looks.on_block(panel):
        tall, on = across, HexColor(ink_on(looks.colour))
    elif looks.colour:
        canvas.setFillColor(HexColor(looks.colour))
        canvas.circle(x, y, across / 2, stroke=0, fill=1)
        tall, on = 0.74 * across, HexColor(ink_on(looks.colour))
    else:
        tall, on = across, black
    sprig(canvas, x, y - tall / 2, tall, on, HexColor(ground))


def picture_room(looks: Looks, panel: Panel) -> tuple[float, float]:
    """How wide and high her picture may be in its place, in points."""
    wide, high = panel.width_mm * mm, panel.height_mm * mm
    if looks.layout.family == "plain":
        return wide, high
    side = min(wide, high)
    return (side, side) if looks.colour is None else (2 * ((1 - _RING) * side / sqrt(8)),) * 2


def _window(canvas: Canvas, looks: Looks, panel: Panel, left: float, bottom: float) -> None:
    """White under a picture on a block: a little more than its place, or all across the block where it is as wide."""
    x, wide = panel.x_mm - _WINDOW, panel.width_mm + 2 * _WINDOW
    for block_x, _, block_wide, _ in looks.layout.blocks_mm:
        if block_x <= panel.x_mm and panel.width_mm > 0.75 * block_wide:
            x, wide = block_x, block_wide
    canvas.setFillColor(white)
    canvas.rect(
        left + (x - panel.x_mm) * mm, bottom - _WINDOW * mm, wide * mm, (panel.height_mm + 2 * _WINDOW) * mm,
        stroke=0, fill=1,
    )  # fmt: skip
