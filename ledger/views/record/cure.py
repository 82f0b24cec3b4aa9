"""How the bars of a batch dry, as its record shows it."""

from dataclasses import dataclass

from ledger.domain.cure.weighings import Weighing
from ledger.views.cure.cure_forecast import Dried, Forecast, dried, dried_words
from ledger.views.cure.weighed import Weighed, weighings_among
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Chart, Pieces, Words
from ledger.views.record.sources import Sources


@dataclass(frozen=True)
class Cure(Section):
    """The weighings of the marked bars, what they say, and what they forecast."""

    title = "Cure and drying"
    weighings: tuple[Weighing, ...]
    forecast: Forecast | None
    weighed: Weighed | None
    why_no_forecast: str | None

    def paper(self, head: Head) -> Pieces:
        """What was weighed and what is forecast in words, and the drying chart where there is a forecast."""
        if self.weighed is None:
            return ()
        words = dried_words(Dried(self.weighed, self.forecast, self.why_no_forecast), head.units)
        chart = (Chart(self.forecast, self.weighings),) if self.forecast else ()
        return (*map(Words, words), *chart)


def cure(read: Sources) -> Cure:
    """What was weighed of the bars; only soap dries."""
    known = weighings_among(read.readings)
    view = dried(read.rows, read.batch, known) if read.batch.soap else None
    return Cure(known, view.forecast if view else None, view.seen if view else None, view.why_none if view else None)
