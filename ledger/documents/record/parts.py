"""Parts of the batch record after the making: deviations, cure, release, labels, bars, complaints, papers."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import grid, heading
from ledger.documents.kit.drying_chart import DryingChart
from ledger.documents.kit.page import Type, para
from ledger.units.dates import show_date
from ledger.units.quantity import whole
from ledger.views.cure.cure_forecast import forecast_words
from ledger.views.record.batch_record import BatchRecord


def deviation_table(view: BatchRecord, wide: float, type_: Type) -> Table:
    """What it was, by how much, what was done, who decided what and why."""
    rows = [
        (
            str(one.number),
            whole(show_date(one.on)),
            one.found,
            one.done or "nothing said",
            "OPEN" if one.open else f"{one.verdict}, {one.by}, {show_date(one.decided_on or one.on)}: {one.reason}",
        )
        for one in view.deviations
    ]
    heads = ("", "on", "what lay outside, and by how much", "done about it", "decision")
    return grid(heads, rows, [wide * s for s in (0.04, 0.12, 0.34, 0.18, 0.32)], type_.body, right=(0,), bold=(4,))


def cure_part(view: BatchRecord, wide: float, type_: Type) -> list[Flowable]:
    """The forecast in words, and the drying chart where a bar was weighed."""
    seen = view.forecast
    if seen is None:
        return []
    found = [*heading("Cure and drying", type_.head), para(forecast_words(seen, view.units), type_.body)]
    if seen.first_mg is not None:
        found += [Spacer(1, 2 * mm), DryingChart(seen, view.weighings, type_.body, wide, view.units)]
    return [KeepTogether(found)]


def check_table(view: BatchRecord, wide: float, type_: Type) -> Table:
    """The checklist of the recipe, point by point."""
    said = {True: "good", False: "NOT GOOD", None: "not said"}
    rows = [(show_date(one.on), one.what, one.found, said[one.good], one.by) for one in view.checks]
    return grid(
        ("on", "what", "found", "verdict", "by"),
        rows,
        [wide * s for s in (0.13, 0.17, 0.42, 0.12, 0.16)],
        type_.body,
        bold=(3,),
    )


def sample_words(view: BatchRecord) -> list[str]:
    """Each retained sample: how many, where, until when; or that there is none."""
    kept = [f"{one.bars} kept at {one.kept_at} until {show_date(one.keep_until)}" for one in view.samples]
    return kept or ["none set aside"]


def complaint_table(view: BatchRecord, wide: float, type_: Type) -> Table:
    """What was reported of the batch, without who reported it."""
    words = {None: "not decided", True: "serious", False: "not serious"}
    rows = [
        (
            str(one.number),
            show_date(one.on),
            one.what,
            words[one.serious],
            "; ".join(step.action for step in one.steps),
            show_date(one.closed_on) if one.closed_on else "open",
        )
        for one in view.complaints
    ]
    heads = ("", "on", "what", "seriousness", "what was done", "closed")
    return grid(heads, rows, [wide * s for s in (0.04, 0.13, 0.28, 0.15, 0.27, 0.13)], type_.body, right=(0,))


def label_table(view: BatchRecord, wide: float, type_: Type) -> Table:
    """Issued = used + spoiled + returned; a run that was not counted yet says so."""
    rows = [
        (
            str(r.run),
            show_date(r.on),
            r.market,
            r.layout,
            str(r.count),
            *((str(r.used), str(r.spoiled), str(r.returned)) if r.used is not None else ("not counted", "", "")),
            r.text_digest[:12],
            r.approved or "before approval was kept",
        )
        for r in view.labels
    ]
    shares = (0.05, 0.12, 0.08, 0.12, 0.07, 0.09, 0.08, 0.1, 0.15, 0.14)
    heads = (
        "run",
        "on",
        "market",
        "layout",
        "issued",
        "used",
        "spoiled",
        "returned",
        "digest of the text",
        "approved by",
    )
    return grid(heads, rows, [wide * s for s in shares], type_.body, right=(0, 4, 5, 6, 7))


def where_table(view: BatchRecord, wide: float, type_: Type) -> Table:
    """Where the bars are and went."""
    rows = [
        (
            str(one.count),
            "came back" if one.where == "returned" and one.left else one.where,
            one.detail if one.detail != one.where else "",
            show_date(one.on) if one.on else "",
        )
        for one in view.whereabouts
    ]
    heads = ("bars", "where", "place, customer or reason", "on")
    return grid(heads, rows, [wide * s for s in (0.07, 0.22, 0.51, 0.2)], type_.body, right=(0,), bold=(0,))


def paper_table(view: BatchRecord, wide: float, type_: Type) -> Table:
    """The papers kept with it, by name and digest."""
    rows = [(one.name, one.kind, one.subject, one.sha256) for one in view.attachments]
    heads = ("name", "kind", "of", "SHA-256")
    return grid(heads, rows, [wide * s for s in (0.25, 0.1, 0.1, 0.55)], type_.body)
