"""Everything known of one batch, from the supplier's drum to the last bar."""

from dataclasses import dataclass, fields
from typing import Any

from ledger.rows.batch import find_batch
from ledger.rows.complaint import complaints_of_batch
from ledger.rows.decision import decisions_about, deviations
from ledger.rows.kept import papers_of_batch
from ledger.rows.opened import Rows
from ledger.views.record.came_out import CameOut, came_out
from ledger.views.record.complaints import Complaints
from ledger.views.record.cure import Cure, cure
from ledger.views.record.decided import Decided
from ledger.views.record.head import Head, Section, head
from ledger.views.record.labels import Labels, labels
from ledger.views.record.look_first import LookFirst, look_first
from ledger.views.record.looked_at import LookedAt, looked_at
from ledger.views.record.lye import Lye, lye
from ledger.views.record.observed import Observed, observed
from ledger.views.record.outside import Outside
from ledger.views.record.papers import Papers
from ledger.views.record.sources import Sources
from ledger.views.record.went_in import WentIn, went_in
from ledger.views.record.where import Where, where
from ledger.views.record.worked import Worked, worked


@dataclass(frozen=True)
class BatchRecord:
    """The batch record as it stands: its head, then its sections in the order in which they are printed."""

    head: Head
    look_first: LookFirst
    went_in: WentIn
    lye: Lye
    observed: Observed
    worked: Worked
    outside: Outside
    came_out: CameOut
    cure: Cure
    decided: Decided
    looked_at: LookedAt
    labels: Labels
    where: Where
    complaints: Complaints
    papers: Papers

    @property
    def on_paper(self) -> tuple[Section, ...]:
        """The sections in the order in which they are printed."""
        return tuple(one for part in fields(self) if isinstance(one := getattr(self, part.name), Section))

    @property
    def on_screen(self) -> tuple[Section, ...]:
        """The sections in the order in which they are said: what is shortest first."""
        making = (self.lye, self.came_out, self.look_first, self.went_in, self.observed)
        return (*making, self.worked, self.outside, self.looked_at, self.decided, self.labels, self.where)

    @property
    def facts(self) -> dict[str, Any]:
        """Every fact by its name, sections apart; in the order in which they were always given, a new one last."""
        parts: list[Any] = [self.head, *self.on_paper]
        every = {
            one.name: getattr(part, one.name) for part in parts for one in fields(part) if not one.metadata.get("inner")
        }
        return {name: every[name] for name in (*_ORDER, *(every.keys() - {*_ORDER}))}


# Programs read the JSON: what stands in it keeps its place. A new fact need not be named here.
_ORDER = (
    *("business", "units", "batch_code", "product", "recipe_code", "recipe_version", "process", "status", "draft"),
    *("as_known", "planned_on", "made_on", "cut_on", "ready_on", "usable_from", "fats_mg", "alkali_mg", "water_mg"),
    *("alkali_kind", "alkali_purity_ppm", "superfat_nominal_ppm", "superfat_actual_ppm", "superfat"),
    *("before_addition", "lye_concentration_ppm", "mass_in_mg", "mass_out_mg", "bars_planned", "bars_cut"),
    *("net_weight_mg", "materials", "corrections", "readings", "decisions", "deviations", "not_logged", "balance"),
    *("loss_limit_ppm", "checks", "samples", "complaints", "weighings", "forecast", "yields", "whereabouts"),
    *("labels", "attachments", "warnings", "printed_from", "back_on_sale"),
)


def batch_record(rows: Rows, code: str, *, program: str, as_known: bool = False) -> BatchRecord:
    """The record of one batch as it stands, or was known at an earlier entry; raises like `find_batch`."""
    batch = find_batch(rows, code)
    read = Sources(rows, batch)
    inputs, gave = went_in(read), came_out(read)
    return BatchRecord(
        head=head(read, gave.bars_cut, program=program, as_known=as_known),
        look_first=look_first(read),
        went_in=inputs,
        lye=lye(read, inputs),
        observed=observed(read),
        worked=worked(read),
        outside=Outside(deviations(rows, batch.id)),
        came_out=gave,
        cure=cure(read),
        decided=Decided(decisions_about(rows, batch.id, batch.yield_lot_id if batch.soap else None)),
        looked_at=looked_at(read),
        labels=labels(read),
        where=where(read),
        complaints=Complaints(complaints_of_batch(rows, batch.code)),
        papers=Papers(papers_of_batch(rows, batch.id)),
    )
