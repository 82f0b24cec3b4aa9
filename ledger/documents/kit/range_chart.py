"""A chart of ranges: one bar an acid from its low to its high share, its name and figures on the line."""

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.lib.colors import black
from reportlab.platypus import Flowable

from ledger.documents.kit.fonts import REGULAR, width
from ledger.documents.kit.page import GREY, HAIR
from ledger.domain.lye.fatty_acids import ProfileLine
from ledger.units.quantity import show_share

AXIS_NAME = "% of the fatty acids"
LEAST_BAR = 0.8  # points; a narrower range is drawn so wide, to be seen at all
_TEN_PERCENT = 100_000
_PITCH, _BAR = 1.06, 0.5  # of the type size: from line to line, and the height of a bar


@dataclass(frozen=True)
class Bar:
    """One range on the axis: where it starts and ends, in points, and its figures in words."""

    name: str
    left: float
    right: float
    figures: str


def axis_ticks(profile: Sequence[ProfileLine]) -> tuple[int, ...]:
    """The ticks in ppm from zero to beyond the highest figure, in steps of 10 %, or of 20 % above a half."""
    highest = max(one.high_ppm for one in profile)
    step = _TEN_PERCENT if highest <= 5 * _TEN_PERCENT else 2 * _TEN_PERCENT
    return tuple(range(0, -(-highest // step) * step + 1, step))


def bars(profile: Sequence[ProfileLine], *, start: float, end: float) -> tuple[Bar, ...]:
    """Each range on an axis that runs from zero at `start` to its last tick at `end`."""
    point = (end - start) / axis_ticks(profile)[-1]
    return tuple(
        Bar(one.name, start + one.low_ppm * point, start + one.high_ppm * point, _figures(one)) for one in profile
    )


def _figures(one: ProfileLine) -> str:
    low, high = (show_share(ppm).removesuffix(" %") for ppm in (one.low_ppm, one.high_ppm))
    return f"{low} to {high}"


class RangeChart(Flowable):
    """The chart in black on white, as wide as it is told; the axis is named and its zero is drawn."""

    def __init__(self, profile: Sequence[ProfileLine], size: float, wide: float) -> None:
        super().__init__()
        self.profile, self.size, self.width = profile, size, wide
        self.height = _PITCH * size * len(profile) + 2.45 * size
        names = max(width(one.name, REGULAR, size) for one in profile)
        figures = max(width(_figures(one), REGULAR, size) for one in profile)
        self.start, self.end = names + 0.7 * size, wide - figures - 0.7 * size

    def wrap(self, *_room: float) -> tuple[float, float]:
        """As wide and high as it is."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw the axis, then a line for each acid."""
        canvas, size = self.canv, self.size
        foot, ticks = 2.45 * size, axis_ticks(self.profile)
        canvas.setFont(REGULAR, size)
        canvas.setFillColor(black)
        for number, tick in enumerate(ticks):
            x = self.start + (self.end - self.start) * tick / ticks[-1]
            canvas.setStrokeColor(GREY if number else black)
            canvas.setLineWidth(HAIR)
            canvas.line(x, foot - 0.25 * size, x, self.height)
            canvas.drawCentredString(x, foot - 1.15 * size, str(tick // 10_000))
        canvas.drawCentredString((self.start + self.end) / 2, foot - 2.2 * size, AXIS_NAME)
        for line, bar in enumerate(bars(self.profile, start=self.start, end=self.end), 1):
            base = self.height - line * _PITCH * size + 0.3 * size
            canvas.drawRightString(self.start - 0.5 * size, base, bar.name)
            canvas.drawRightString(self.width, base, bar.figures)
            canvas.rect(
                bar.left, base + 0.08 * size, max(bar.right - bar.left, LEAST_BAR), _BAR * size, stroke=0, fill=1
            )
