"""Draws her picture."""

from reportlab.pdfgen.canvas import Canvas

from ledger.views.label.picture import LabelPicture


def draw_picture(
    canvas: Canvas, picture: LabelPicture, left: float, bottom: float, wide: float, high: float,
    *, centred: bool, ink: str | None,
) -> None:  # fmt: skip
    canvas.rect(left, bottom, wide, high)
