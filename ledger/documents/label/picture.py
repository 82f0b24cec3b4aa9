"""Her picture on a label: an SVG as vectors, a PNG as it is; looked at before anything is drawn."""

import io
import warnings
from functools import lru_cache
from math import ceil

from PIL import Image
from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.label.svg import Drawing, read_svg
from ledger.errors import Refused
from ledger.units.colour import BLACK, WHITE, luminance
from ledger.views.label.picture import LabelPicture

SHARP = 300  # dots an inch at printed size; common practice of print shops, no source
MOST_BYTES, MOST_DOTS = 5_000_000, 40_000_000
_PNG = b"\x89PNG\r\n\x1a\n"


@lru_cache(maxsize=4)
def read_picture(picture: LabelPicture) -> Drawing | Image.Image:
    """The shapes of an SVG, or the dots of a PNG. Raises Refused for anything else, or what is too large."""
    if len(picture.content) > MOST_BYTES:
        raise Refused(f"The picture {picture.name} is larger than {MOST_BYTES // 1_000_000} MB; save it smaller.")
    if not picture.content.startswith(_PNG):
        if b"<svg" not in picture.content[:4096] and b":svg" not in picture.content[:4096]:
            raise Refused(f"The picture {picture.name} is neither an SVG nor a PNG; save it as one of them.")
        return read_svg(picture.content, picture.name)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            image = Image.open(io.BytesIO(picture.content), formats=("PNG",))
            if image.width * image.height > MOST_DOTS:
                raise Refused(
                    f"The picture {picture.name} has {image.width} × {image.height} dots, more than a label can show; "
                    "save it smaller."
                )
            image.load()
    except (OSError, SyntaxError, ValueError, Warning, Image.DecompressionBombError):
        raise Refused(f"The picture {picture.name} cannot be read to its end; save it as a PNG again.") from None
    return image.convert("RGBA")


def size_within(picture: LabelPicture, wide: float, high: float) -> tuple[float, float]:
    """How large a picture is printed within a place, in points."""
    shown = read_picture(picture)
    across, down = shown.window[2:] if isinstance(shown, Drawing) else shown.size
    scale = min(wide / across, high / down)
    return across * scale, down * scale


def dots_an_inch(picture: LabelPicture, wide: float, high: float) -> float | None:
    """How many dots an inch a PNG has as it is printed within a place; None for an SVG, which has none."""
    shown = read_picture(picture)
    return None if isinstance(shown, Drawing) else shown.width / (size_within(picture, wide, high)[0] / 72)


def picture_doubts(picture: LabelPicture, wide: float, high: float, *, black: bool) -> tuple[str, ...]:
    """What she should know before she prints it, a sentence for each."""
    found = []
    dots = dots_an_inch(picture, wide, high)
    if dots is not None and dots < SHARP:
        across, down = size_within(picture, wide, high)
        needed = " × ".join(str(ceil(side / 72 * SHARP - 1e-9)) for side in (across, down))
        found.append(
            f"{picture.name} has {dots:.0f} dots an inch at {across / mm:.0f} × {down / mm:.0f} mm, and under {SHARP} "
            f"its edges are seen; save it with {needed} dots, or as an SVG."
        )
    if black and not one_colour(picture):
        found.append(
            f"{picture.name} has more than one colour; in black alone it prints in greys, or loses its paler parts."
        )
    return tuple(found)


def one_colour(picture: LabelPicture) -> bool:
    """Whether a picture is black, or any one colour, on nothing or on white."""
    shown = read_picture(picture)
    if isinstance(shown, Drawing):
        return len(shown.colours - {WHITE}) <= 1
    flat = Image.new("RGBA", shown.size, WHITE)
    flat.alpha_composite(shown)
    grey = flat.convert("L").histogram()
    return sum(grey[64:192]) <= 0.05 * sum(grey)  # the edges of a drawing have some grey


def draw_picture(
    canvas: Canvas, picture: LabelPicture, left: float, bottom: float, wide: float, high: float,
    *, centred: bool, right: bool = False, black: bool = False,
) -> None:  # fmt: skip
    """Draw a picture as large as it goes within a place; in black alone where told."""
    shown = read_picture(picture)
    across, down = size_within(picture, wide, high)
    left += (wide - across) * (0.5 if centred else 1.0 if right else 0.0)
    bottom += (high - down) / 2
    if not isinstance(shown, Drawing):
        if black:
            grey, alpha = shown.convert("L"), shown.getchannel("A")
            shown = Image.merge("RGBA", (grey, grey, grey, alpha))
        canvas.drawImage(ImageReader(shown), left, bottom, across, down, mask="auto")
        return
    x, y, window_wide, _ = shown.window
    scale = across / window_wide
    canvas.saveState()
    frame = canvas.beginPath()
    frame.rect(left, bottom, across, down)
    canvas.clipPath(frame, stroke=0, fill=0)
    canvas.transform(scale, 0, 0, -scale, left - x * scale, bottom + down + y * scale)
    for shape in shown.shapes:
        path = canvas.beginPath()
        for kind, points in shape.steps:
            if kind == "Z":
                path.close()
            else:
                draw = {"M": path.moveTo, "L": path.lineTo, "C": path.curveTo}[kind]
                draw(*(n for point in points for n in point))
        if shape.fill:
            canvas.setFillColor(HexColor(_ink(shape.fill, black)))
        if shape.stroke:
            canvas.setStrokeColor(HexColor(_ink(shape.stroke, black)))
            canvas.setLineWidth(shape.stroke_wide)
        canvas.drawPath(
            path, stroke=int(bool(shape.stroke)), fill=int(bool(shape.fill)), fillMode=0 if shape.even_odd else 1
        )
    canvas.restoreState()


def _ink(colour: str, black: bool) -> str:
    """A colour as it is; in black alone black, or white where it is paler than the middle grey of a page."""
    if not black:
        return colour
    return WHITE if luminance(colour) > 0.5 else BLACK
