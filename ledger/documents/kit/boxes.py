"""What is written in by hand at the bench: boxes, and rows of words with a box at their end."""

from collections.abc import Sequence

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Table

from ledger.documents.kit.fonts import REGULAR
from ledger.documents.kit.page import GREY, HAIR, para, plain

BOX_HEIGHT = 12 * mm
BOX_WIDTH = 35 * mm
TICK_WIDTH = 12 * mm


class Box(Flowable):
    """An empty box to write in, with the unit of what belongs in it in its corner."""

    def __init__(self, size: float, unit: str = "", width: float = BOX_WIDTH, height: float = BOX_HEIGHT) -> None:
        super().__init__()
        self.size, self.unit, self.width, self.height = size, unit, width, height

    def draw(self) -> None:
        """Draw the frame and the unit."""
        self.canv.setLineWidth(0.8)
        self.canv.setStrokeColor(black)
        self.canv.rect(0, 0, self.width, self.height)
        self.canv.setFont(REGULAR, self.size)
        self.canv.drawRightString(self.width - 1.5 * mm, 1.6 * mm, self.unit)


class Notes(Flowable):
    """A box for words that takes what is left of the page."""

    _LEAST, _MOST = 25 * mm, 75 * mm

    def __init__(self, size: float, label: str) -> None:
        super().__init__()
        self.size, self.label = size, label

    def wrap(self, wide: float, left: float) -> tuple[float, float]:
        """At least 25 mm high; asks for a new page where less is left."""
        self.width = wide
        self.height = min(self._MOST, left) if left >= self._LEAST else self._MOST
        return self.width, self.height

    def draw(self) -> None:
        """Draw the frame with its label at the top."""
        self.canv.setLineWidth(0.8)
        self.canv.setStrokeColor(black)
        self.canv.rect(0, 0.5, self.width, self.height - 1)
        self.canv.setFont(REGULAR, self.size)
        self.canv.drawString(2 * mm, self.height - 5.5 * mm, self.label)


def box_row(words: list[Flowable], box: Flowable, wide: float, tick: Sequence[Flowable] = ()) -> Table:
    """Words at the left, one box at the right, and room for a tick; the boxes of a page stand in one column."""
    table = Table([[words, box, list(tick)]], colWidths=[wide - BOX_WIDTH - TICK_WIDTH, BOX_WIDTH, TICK_WIDTH])
    table.setStyle(
        plain(
            ("RIGHTPADDING", (0, 0), (0, 0), 3 * mm),
            ("LEFTPADDING", (2, 0), (2, 0), 3 * mm),
            ("TOPPADDING", (0, 0), (-1, -1), 1.1 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 1.1 * mm),
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("LINEBELOW", (0, 0), (-1, -1), HAIR, GREY),
        )
    )
    return table


def box_pairs(asked: Sequence[tuple[str, str]], size: float, wide: float) -> Table:
    """Labelled boxes, two side by side."""
    gap = 8 * mm
    half = (wide - gap) / 2
    cells: list[Flowable | str] = []
    for label, unit in asked:
        cell = Table([[para(label, size), Box(size, unit)]], colWidths=[half - BOX_WIDTH, BOX_WIDTH])
        cell.setStyle(plain(("VALIGN", (0, 0), (-1, -1), "MIDDLE")))
        cells.append(cell)
    cells += [""] * (len(cells) % 2)
    table = Table([[a, "", b] for a, b in zip(cells[::2], cells[1::2], strict=True)], colWidths=[half, gap, half])
    table.setStyle(plain(("BOTTOMPADDING", (0, 0), (-1, -1), 2.2 * mm)))
    return table
