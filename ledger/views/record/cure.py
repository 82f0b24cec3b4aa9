"""How the bars of a batch dry, as its record shows it."""

from dataclasses import dataclass

from ledger.views.cure.cure_forecast import Forecast, Weighing, forecast, forecast_words, weighings_among
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Chart, Pieces, Words
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class Cure(Section):
    """The weighings of the marked bars, and what they or the composition forecast."""

    title = "Cure and drying"
    weighings: tuple[Weighing, ...]
    forecast: Forecast | None

    def paper(self, head: Head) -> Pieces:
        """The forecast in words, and the drying chart."""
        seen = self.forecast
        return (Words(forecast_words(seen, head.units)), Chart(seen, self.weighings)) if seen else ()


def cure(read: Sources) -> Cure:
    """What was weighed of the bars; only soap dries."""
    known = weighings_among(read.readings)
    return Cure(known, forecast(read.rows, read.batch, known) if read.batch.soap else None)
