"""A chart of the drying: the weighings as points, and the band in which every law they allow lies."""

from math import ceil, floor, log10

from reportlab.lib.colors import Color, black, white
from reportlab.platypus import Flowable

from ledger.documents.kit.fonts import REGULAR, draw_text
from ledger.documents.kit.page import GREY, HAIR
from ledger.domain.cure.weighings import Weighing
from ledger.units.dates import show_date
from ledger.units.measures import scale_unit
from ledger.units.quantity import show_mass
from ledger.units.words import Units
from ledger.views.cure.cure_forecast import Forecast

BAND = Color(0.88, 0.88, 0.88)  # light enough for the points and lines on it
_STEPS = 48  # of the curve
_WEEK = 7
_GRAM, _OUNCE = 1000.0, 28349.523125  # 1 oz = 28.349523125 g exactly (NIST SP 811)


def round_step(span_mg: float, unit_mg: float) -> float:
    """The distance of figures on the weight axis, in mg: 1, 2 or 5 times a power of ten of the unit, five at most."""
    power = 10.0 ** floor(log10(max(span_mg, 1) / unit_mg / 5))
    return next(one * power for one in (1, 2, 5, 10) if one * power * 5 * unit_mg >= span_mg) * unit_mg


class DryingChart(Flowable):
    """Weight of a bar over the weeks, black on white; the axes are named and every line has its words on it."""

    def __init__(self, view: Forecast, known: tuple[Weighing, ...], size: float, wide: float, units: Units) -> None:
        super().__init__()
        self.view, self.known, self.size, self.units = view, known, size, units
        self.width, self.height = wide, 17 * size
        last = max((one.on - view.start).days for one in known) if known else 0
        self.days = -(-max(min((view.steady_to - view.start).days + 14, 3 * last), last + _WEEK, 42) // _WEEK) * _WEEK
        self.band = [view.envelope.between(self.days * step / _STEPS) for step in range(_STEPS + 1)]
        least = self.band[-1][0]
        shown = [view.first_mg, max(least, round(0.6 * view.first_mg)), *(one.mass_mg for one in known)]
        self.step = round_step(max(shown) - min(shown), _OUNCE if scale_unit(units) == "oz" else _GRAM)
        self.low = floor(min(shown) / self.step - 0.3) * self.step
        self.top = ceil(max(shown) / self.step + 0.3) * self.step

    def wrap(self, *_room: float) -> tuple[float, float]:
        """As wide and high as it is."""
        return self.width, self.height

    def _at(self, days: float, mg: float) -> tuple[float, float]:
        left, foot = 5 * self.size, 3 * self.size
        across = (self.width - left - 2 * self.size) * days / self.days
        up = (self.height - foot - 2.1 * self.size) * (mg - self.low) / (self.top - self.low)
        return left + across, foot + up

    def draw(self) -> None:
        """Draw the axes, the band, the curve and the points."""
        canvas, view, size = self.canv, self.view, self.size
        canvas.setFont(REGULAR, size)
        canvas.setFillColor(black)
        canvas.setStrokeColor(GREY)
        canvas.setLineWidth(HAIR)
        for tick in range(0, self.days + 1, _WEEK * -(-self.days // (10 * _WEEK))):
            x, y = self._at(tick, self.low)
            canvas.line(x, y, x, self._at(tick, self.top)[1])
            canvas.drawCentredString(x, y - 1.1 * size, str(tick // _WEEK))
        x, y = self._at(self.days / 2, self.low)
        canvas.drawCentredString(x, y - 2.4 * size, f"weeks since {show_date(view.start)}")
        for step in range(round((self.top - self.low) / self.step) + 1):
            mg = self.low + self.step * step
            x, y = self._at(0, mg)
            canvas.drawRightString(x - 0.5 * size, y - 0.35 * size, show_mass(round(mg), self.units))
        canvas.drawString(0, self.height - 0.8 * size, "weight of a bar")
        self._band()
        for one in self.known:
            x, y = self._at((one.on - view.start).days, one.mass_mg)
            canvas.circle(x, y, 1.6, stroke=0, fill=1)
        if self.known:
            last = [one for one in self.known if one.on == self.known[-1].on]
            x, y = self._at((last[0].on - view.start).days, max(one.mass_mg for one in last))
            marks = ", ".join(sorted(one.mark for one in last))
            draw_text(canvas, x + 0.3 * size, y + 0.4 * size, marks, REGULAR, size)
        canvas.setStrokeColor(black)
        canvas.setLineWidth(0.8)
        between = [min((each - view.start).days, self.days) for each in (view.steady_from, view.steady_to)]
        for each in between:
            x, _ = self._at(each, 0)
            canvas.line(x, self._at(0, self.low)[1], x, self._at(0, self.top)[1] - 1.4 * size)
        said = f"grey: between what it may weigh, by {view.based_on}, {view.holds}"
        canvas.drawRightString(self.width - 2 * size, self.height - 0.8 * size, said)
        x, _ = self._at(sum(between) / 2, 0)
        words = _steady(view)
        room = canvas.stringWidth(words, REGULAR, size) / 2 + 2  # half of its words, which stay on the chart
        x, y = min(max(x, self._at(0, 0)[0] + room), self._at(self.days, 0)[0] - room), self._at(0, self.top)[1] - size
        canvas.setFillColor(white)
        canvas.rect(x - room, y - 0.3 * size, 2 * room, 1.2 * size, stroke=0, fill=1)
        canvas.setFillColor(black)
        canvas.drawCentredString(x, y, words)

    def _band(self) -> None:
        """The area between the least and the most that a bar may weigh, with its edges."""
        canvas = self.canv
        canvas.setStrokeColor(black)
        canvas.setLineWidth(HAIR)
        canvas.setFillColor(BAND)
        path = canvas.beginPath()
        there = [(step, each[0]) for step, each in enumerate(self.band)]
        back = [(step, each[1]) for step, each in reversed([*enumerate(self.band)])]
        for place, (step, mg) in enumerate([*there, *back]):
            at = self._at(self.days * step / _STEPS, min(max(mg, self.low), self.top))
            (path.lineTo if place else path.moveTo)(*at)
        path.close()
        canvas.drawPath(path, stroke=1, fill=1)
        canvas.setFillColor(black)


def _steady(view: Forecast) -> str:
    """Between which days the bars are steady."""
    return f"steady {show_date(view.steady_from)} to {show_date(view.steady_to)}"
