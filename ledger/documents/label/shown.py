"""The face of a label as a picture on another paper, as it was printed."""

import tempfile
from hashlib import sha256
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from ledger.documents.kit.layout import LabelLayout, label_layout
from ledger.documents.kit.page import GREY
from ledger.documents.label.labels import keep_label, set_label
from ledger.errors import BadInput, Refused
from ledger.views.label.label import LabelText


class LabelShown(Flowable):
    """The face of a label, or all of one that tells no face, as large as its room lets it be and never enlarged."""

    def __init__(self, label: LabelText, layout: LabelLayout, wide: float, high: float) -> None:
        super().__init__()
        self.label, self.layout = label, layout
        left, top, across, down = layout.face_mm or (0.0, 0.0, layout.width_mm, layout.height_mm)
        self.scale = min(1.0, wide / (across * mm), high / (down * mm))
        self.width, self.height = across * mm * self.scale, down * mm * self.scale
        self.corner = left * mm, (layout.height_mm - top - down) * mm
        self.name = "label" + sha256(repr((label, layout)).encode()).hexdigest()[:12]

    def wrap(self, *_room: float) -> tuple[float, float]:
        """As wide and high as it is."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw the label, cut off round its face, with a thin line round it."""
        canvas = self.canv
        if not canvas.hasForm(self.name):
            keep_label(canvas, self.name, self.label, self.layout, marked=False)
        canvas.saveState()
        edge = canvas.beginPath()
        edge.rect(0, 0, self.width, self.height)
        canvas.clipPath(edge, stroke=0, fill=0)
        canvas.scale(self.scale, self.scale)
        canvas.translate(-self.corner[0], -self.corner[1])
        canvas.doForm(self.name)
        canvas.restoreState()
        canvas.saveState()
        canvas.setStrokeColor(GREY)
        canvas.setLineWidth(0.4)
        canvas.rect(0, 0, self.width, self.height, stroke=1, fill=0)
        canvas.restoreState()


def label_shown(label: LabelText, layout_source: str, *, wide: float, high: float) -> LabelShown | None:
    """A label in a room of so many points, by the text of its layout; None where it cannot be set today."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "label of the run.toml"
        path.write_text(layout_source, encoding="utf-8")
        try:
            layout = label_layout(str(path))
            set_label(label, layout)
        except (BadInput, Refused):
            return None
    return LabelShown(label, layout, wide, high)
