"""The batch record: what an inspector, an insurer, or a stranger who must repeat the batch can work from."""

from datetime import date

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer, Table

from ledger.documents.kit.blocks import facts, grid, heading, titled
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, Type, build, escape, para, plain, style
from ledger.documents.record.parts import (
    check_table,
    complaint_table,
    cure_part,
    deviation_table,
    label_table,
    paper_table,
    sample_words,
    where_table,
)
from ledger.domain.bench.status import in_words
from ledger.domain.lye.uncertainty import Superfat
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, show_share, whole
from ledger.units.words import Units
from ledger.views.record.batch_record import BatchRecord, UsedMaterial

TYPE = Type(large=26, head=12, body=8.5)
_LABEL = 32 * mm


def draw_batch_record(view: BatchRecord, *, paper: str = "A4") -> bytes:
    """The record as a PDF, marked as a draft until the batch is decided."""
    view = printable(view)
    mark = "DRAFT" if view.draft else None
    if view.as_known:
        mark = f"{mark}, AS KNOWN THEN" if mark else "AS KNOWN THEN"
    sheet = Sheet(paper, f"Batch {view.batch_code}", "Batch record", view.business, view.printed_from, TYPE, mark)
    wide = sheet.width
    story: list[Flowable] = [_head(view, wide)]
    if view.warnings:
        story += heading("Look at this first", TYPE.head)
        story += [para(f"• {one}", TYPE.body, bold=True) for one in view.warnings]
    story += heading("What went in", TYPE.head)
    story.append(_materials(view, wide) if view.materials else _none("Nothing weighed yet."))
    story += [_none(one) for one in view.corrections]
    story += heading("Lye and superfat", TYPE.head)
    story.append(facts(_lye(view), TYPE.body, label_width=_LABEL, total=wide, columns=2))
    story += _figures(view, wide)
    story += heading("Readings and observations", TYPE.head)
    story.append(_readings(view, wide) if view.readings else _none("None logged."))
    if view.not_logged and view.made_on:
        story.append(_none(f"Not logged: {'; '.join(view.not_logged)}."))
    story += heading("Deviations", TYPE.head)
    story.append(deviation_table(view, wide, TYPE) if view.deviations else _none("None: nothing lay outside a limit."))
    story += heading("Yield", TYPE.head)
    story += _yield(view, wide)
    story += cure_part(view, wide, TYPE)
    story += heading("Decisions", TYPE.head)
    story.append(_decisions(view, wide) if view.decisions else _none("None taken yet."))
    story += heading("Looked at before the release", TYPE.head)
    story.append(check_table(view, wide, TYPE) if view.checks else _none("Nothing yet."))
    story += [_none(f"Retained samples: {one}.") for one in sample_words(view)]
    story += heading("Labels printed", TYPE.head)
    story.append(label_table(view, wide, TYPE) if view.labels else _none("None printed yet."))
    story += heading("Where the bars are, and where they went", TYPE.head)
    story.append(where_table(view, wide, TYPE) if view.whereabouts else _none("No bars yet."))
    story += [_none(f"{one.words}.") for one in view.back_on_sale]
    story += heading("Complaints", TYPE.head)
    story.append(complaint_table(view, wide, TYPE) if view.complaints else _none("None booked of this batch."))
    story += heading("Papers kept with it", TYPE.head)
    story.append(paper_table(view, wide, TYPE) if view.attachments else _none("None attached."))
    story.append(_close())
    return build(story, sheet)


def _none(text: str) -> Paragraph:
    return para(text, TYPE.body)


def _head(view: BatchRecord, wide: float) -> Table:
    def day(value: date | None) -> str:
        return show_date(value) if value else ""

    recipe = f"{view.recipe_code}, version {view.recipe_version}" if view.recipe_code else "none (combined lots)"
    pairs = (
        ("status", view.status),
        ("made on", day(view.made_on) or "not yet"),
        ("cut on" if view.bars_planned else "taken on", day(view.cut_on)),
        ("ready on", day(view.ready_on)),
        ("usable from", f"{day(view.usable_from)} (not yet steady in weight)" if view.usable_from else ""),
        ("recipe", recipe),
        ("process", view.process),
        ("planned for", day(view.planned_on)),
    )
    left = [
        Paragraph(escape(view.batch_code), style(TYPE.large, bold=True, leading=1.1)),
        para(view.product, TYPE.head, bold=True),
        Spacer(1, 2.5 * mm),
        facts(pairs, TYPE.body, label_width=20 * mm, total=wide - 29 * mm, columns=2),
    ]
    return titled(left, view.batch_code, wide)


def _lye(view: BatchRecord) -> list[tuple[str, str]]:
    if view.superfat_nominal_ppm is None:
        return [("lye", "none: no fats are saponified in this batch")]
    actual = view.superfat_actual_ppm
    purity = f", purity {show_share(view.alkali_purity_ppm)}" if view.alkali_purity_ppm else ""
    weighed = f"{show_mass(view.alkali_mg, view.units)} of {view.alkali_kind}{purity}" if view.alkali_kind else ""
    return [
        ("superfat meant", f"{show_share(view.superfat_nominal_ppm)} of the fats' alkali demand"),
        ("superfat as weighed", show_share(actual, 2) if actual is not None else "not everything is weighed yet"),
        ("likely low, all low", _low(view.superfat)),
        (
            "before the addition",
            f"{show_share(view.before_addition.nominal_ppm, 2)}; {_low(view.before_addition)}"
            if view.before_addition
            else "",
        ),
        ("lye concentration", show_share(view.lye_concentration_ppm) if view.lye_concentration_ppm else ""),
        ("fats", show_mass(view.fats_mg, view.units)),
        ("alkali", weighed or "not weighed yet"),
        ("water, other liquids", show_mass(view.water_mg, view.units)),
    ]


def _low(found: Superfat | None) -> str:
    return f"{show_share(found.likely_low_ppm, 2)}, {show_share(found.all_low_ppm, 2)}" if found else ""


def _quantity(value: int | None, pieces: bool, units: Units) -> str:
    if value is None:
        return ""
    return whole(f"{value} pcs" if pieces else show_mass(value, units))


def _materials(view: BatchRecord, wide: float) -> Table:
    def number(one: UsedMaterial) -> str:
        return one.supplier_lot or {"own": "own growing", "batch": "own making"}.get(one.origin, "number unknown")

    def window(one: UsedMaterial) -> str:
        if one.low is None or one.high is None or one.pieces:
            return ""
        low, high = show_mass(one.low, view.units), show_mass(one.high, view.units)
        same = low.rsplit(" ", 1)[-1] == high.rsplit(" ", 1)[-1]
        return whole(f"{low.rsplit(' ', 1)[0] if same else low} to {high}")

    rows = [
        (
            str(one.number or ""),
            "\n".join(word for word in (one.material, one.inci) if word),
            one.lot_code,
            "\n".join(word for word in (number(one), one.supplier) if word),
            _quantity(one.target, one.pieces, view.units),
            window(one),
            _quantity(one.used, one.pieces, view.units),
            f"{one.weighed_by}\n{_at(one.weighed_at)}",
        )
        for one in view.materials
    ]
    heads = ("", "material, INCI name", "lot", "their number, supplier", "target", "OK", "weighed", "by, UTC")
    shares = (0.04, 0.225, 0.08, 0.17, 0.095, 0.15, 0.1, 0.14)
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(4, 5, 6), bold=(2, 6))


def _at(moment: str) -> str:
    return whole(f"{show_date(date.fromisoformat(moment[:10]))}, {moment[11:16]}")


def _figures(view: BatchRecord, wide: float) -> list[Flowable]:
    """The saponification value or purity that was reckoned with, lot by lot, and where it comes from."""
    rows = [(one.lot_code, one.material, one.certificate) for one in view.materials if one.certificate]
    if not rows:
        return []
    table = grid(
        ("lot", "material", "figure used, and its source"),
        rows,
        [wide * s for s in (0.09, 0.25, 0.66)],
        TYPE.body,
        bold=(0,),
    )
    return [Spacer(1, 1.5 * mm), table]


def _readings(view: BatchRecord, wide: float) -> Table:
    rows = [
        (
            whole(show_date(r.on)),
            r.at or "",
            r.what,
            "; ".join(word for word in (r.value, r.method, r.tool, "corrected below" if r.corrected else None) if word),
            r.limit or "",
            r.by,
            str(r.entry),
        )
        for r in view.readings
    ]
    heads = ("on", "at", "what", "value", "limit", "by", "entry")
    shares = (0.12, 0.07, 0.17, 0.25, 0.2, 0.12, 0.07)
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(6,), bold=(3,))


def _yield(view: BatchRecord, wide: float) -> list[Flowable]:
    units = view.units
    pairs = [
        *((name, show_mass(mg, units) if mg is not None else "not weighed") for name, mg in view.balance.lines()),
        ("that is", _loss(view)),
        ("bars planned", str(view.bars_planned or "")),
        ("bars cut", str(view.bars_cut) if view.bars_cut else "none yet" if view.bars_planned else ""),
        ("declared weight, each", show_mass(view.net_weight_mg, units) if view.net_weight_mg else ""),
    ]
    found: list[Flowable] = [facts(pairs, TYPE.body, label_width=_LABEL, total=wide, columns=2)]
    if view.yields:
        rows = [
            (
                one.lot_code,
                one.material,
                _quantity(one.quantity, one.pieces, units),
                show_mass(one.mass_mg, units) if one.mass_mg is not None else "not weighed",
                show_date(one.on),
                in_words(one.status),
                one.place,
            )
            for one in view.yields
        ]
        heads = ("lot", "what", "how much", "weight", "on", "status", "here now")
        shares = (0.09, 0.23, 0.1, 0.1, 0.12, 0.14, 0.22)
        table = grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(2, 3), bold=(0,))
        found += [Spacer(1, 1.5 * mm), table]
    return found


def _loss(view: BatchRecord) -> str:
    """The loss as a share of what went in, with its limit."""
    if view.balance.loss_ppm is None:
        return ""
    limit = f", limit {show_share(view.loss_limit_ppm)}" if view.loss_limit_ppm is not None else ""
    return f"{show_share(view.balance.loss_ppm)} of what went in{limit}"


def _decisions(view: BatchRecord, wide: float) -> Table:
    rows = [
        (
            show_date(one.on),
            f"{one.subject} {one.what}" + (" (superseded)" if one.superseded else ""),
            one.by,
            one.reason or "",
            str(one.entry),
        )
        for one in view.decisions
    ]
    shares = (0.12, 0.29, 0.16, 0.36, 0.07)
    heads = ("on", "decision", "by", "reason", "entry")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(4,), bold=(1,))


def _close() -> Flowable:
    """What the record does not say, and a line to sign by hand."""
    words = (
        "This record states what was logged. It is no safety assessment and claims nothing for the product; "
        "what may be sold where is for the responsible person and a licensed assessor to decide."
    )
    lines = Table(
        [[para("read by", TYPE.body), "", para("on", TYPE.body, right=True), ""]],
        colWidths=[14 * mm, 80 * mm, 10 * mm, 40 * mm],
        hAlign="LEFT",
    )
    lines.setStyle(
        plain(("RIGHTPADDING", (2, 0), (2, 0), 3 * mm), *(("LINEBELOW", (x, 0), (x, 0), HAIR, GREY) for x in (1, 3)))
    )
    return KeepTogether([Spacer(1, 6 * mm), para(words, TYPE.body), Spacer(1, 10 * mm), lines])
