"""A chart of the drying: the weighings as points, the curve through them, and the range it is given."""

from math import ceil, floor, log10

from reportlab.lib.colors import black, white
from reportlab.platypus import Flowable

from ledger.documents.kit.fonts import REGULAR, check_glyphs
from ledger.documents.kit.page import GREY, HAIR
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass
from ledger.units.words import Units
from ledger.views.cure.cure_forecast import BY_WEIGHINGS, Forecast, Weighing, based_on

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
        assert view.first_mg is not None
        self.view, self.known, self.size, self.units = view, known, size, units
        self.width, self.height = wide, 17 * size
        last = max((one.on - view.start).days for one in known) if known else 0
        self.days = -(-max((view.steady_on - view.start).days + 14, last + _WEEK, 42) // _WEEK) * _WEEK
        least, _ = view.weight_after(self.days) or (view.first_mg, 0)
        shown = [view.first_mg, max(least, round(0.6 * view.first_mg)), *(one.mass_mg for one in known)]
        self.step = round_step(max(shown) - min(shown), _OUNCE if units == "us" else _GRAM)
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
        for side, heavy in ((1, HAIR), (0, HAIR), (None, 1.2)):
            self._curve(side, heavy)
        for one in self.known:
            x, y = self._at((one.on - view.start).days, one.mass_mg)
            canvas.circle(x, y, 1.6, stroke=0, fill=1)
        if self.known:
            last = [one for one in self.known if one.on == self.known[-1].on]
            x, y = self._at((last[0].on - view.start).days, max(one.mass_mg for one in last))
            marks = check_glyphs(", ".join(sorted(one.mark for one in last)), "mark")
            canvas.drawString(x + 0.3 * size, y + 0.4 * size, marks)
        basis = f"fitted to {based_on(view)}" if view.basis == BY_WEIGHINGS else "from the composition"
        assert view.first_mg is not None
        steady = (view.steady_on - view.start).days
        x, y = self._at(steady, view.first_mg * view.curve.left(steady))
        canvas.setStrokeColor(black)
        canvas.setLineWidth(0.8)
        canvas.line(x, y - size, x, self._at(0, self.top)[1] - 1.4 * size)
        canvas.drawRightString(
            self.width - 2 * size, self.height - 0.8 * size, f"{basis}; thin: the range, {view.holds}"
        )
        words = _steady(view)
        room = canvas.stringWidth(words, REGULAR, size) / 2 + 2  # half of its words, which stay on the chart
        x, y = min(max(x, self._at(0, 0)[0] + room), self._at(self.days, 0)[0] - room), self._at(0, self.top)[1] - size
        canvas.setFillColor(white)
        canvas.rect(x - room, y - 0.3 * size, 2 * room, 1.2 * size, stroke=0, fill=1)
        canvas.setFillColor(black)
        canvas.drawCentredString(x, y, words)

    def _curve(self, side: int | None, heavy: float) -> None:
        """The least (0) or the most (1) that a bar may weigh, or the curve itself."""
        canvas, view = self.canv, self.view
        canvas.setStrokeColor(black)
        canvas.setLineWidth(heavy)
        path = canvas.beginPath()
        for step in range(_STEPS + 1):
            days = self.days * step / _STEPS
            assert view.first_mg is not None
            ends = view.weight_after(days)
            mg = view.first_mg * view.curve.left(days) if side is None or ends is None else ends[side]
            (path.lineTo if step else path.moveTo)(*self._at(days, min(max(mg, self.low), self.top)))
        canvas.drawPath(path)


def _steady(view: Forecast) -> str:
    """Between which days the bars are steady."""
    return f"steady {show_date(view.steady_from)} to {show_date(view.steady_to)}"
