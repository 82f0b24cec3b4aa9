"""The batch record: what an inspector, an insurer, or a stranger who must repeat the batch can work from."""

from datetime import date

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer, Table, TableStyle

from ledger.documents.page import Sheet, build, escape, facts, grid, heading, para, qr, style
from ledger.domain.dates import show_date
from ledger.domain.quantity import show_mass, show_share
from ledger.views.batch_record import BatchRecord, UsedMaterial

BODY = 9
HEAD = 12
BIG = 26


def draw_batch_record(view: BatchRecord, *, paper: str = "A4") -> bytes:
    """The record as a PDF, marked as a draft until the batch is decided. Raises Refused like the page."""
    mark = "DRAFT" if view.draft else None
    sheet = Sheet(paper, f"Batch {view.batch_code}", "Batch record", view.business, view.printed_from, mark)
    wide = sheet.width
    story: list[Flowable] = [_head(view, wide)]
    if view.warnings:
        story += heading("Look at this first", HEAD)
        story += [para(f"• {one}", BODY) for one in view.warnings]
    story += heading("Lye and superfat", HEAD)
    story.append(facts(_lye(view), BODY, label_width=46 * mm, total=wide))
    story += heading("What went in", HEAD)
    story.append(_materials(view, wide))
    story += heading("Readings and observations", HEAD)
    story.append(_readings(view, wide) if view.readings else para("None logged.", BODY))
    story += heading("Yield", HEAD)
    story += _yield(view, wide)
    story += heading("Labels printed", HEAD)
    story.append(_labels(view, wide) if view.labels else para("None printed yet.", BODY))
    story += heading("Decisions", HEAD)
    story.append(_decisions(view, wide) if view.decisions else para("None taken yet.", BODY))
    story += heading("Where the bars are, and where they went", HEAD)
    story.append(_whereabouts(view, wide) if view.whereabouts else para("No bars yet.", BODY))
    story += heading("Papers kept with it", HEAD)
    story.append(_papers(view, wide) if view.attachments else para("None attached.", BODY))
    story.append(Spacer(1, 6 * mm))
    story.append(
        para(
            "This record states what was logged. It is no safety assessment and claims nothing for the product; "
            "what may be sold where is for the responsible person and a licensed assessor to decide.",
            BODY - 0.5,
        )
    )
    return build(story, sheet)


def _head(view: BatchRecord, wide: float) -> Table:
    def day(value: date | None) -> str:
        return show_date(value) if value else ""

    recipe = f"{view.recipe_code}, version {view.recipe_version}" if view.recipe_code else "none (combined lots)"
    pairs = (
        ("status", view.status),
        ("recipe", f"{recipe}, {view.process}"),
        ("planned for", day(view.planned_on)),
        ("made on", day(view.made_on) or "not yet"),
        ("cut on", day(view.cut_on)),
        ("ready on", day(view.ready_on)),
        ("usable from", f"{day(view.usable_from)} (not yet steady in weight)" if view.usable_from else ""),
    )
    left = [
        Paragraph(escape(view.batch_code), style(BIG, bold=True, leading=1.1)),
        Spacer(1, 1 * mm),
        para(view.product, HEAD + 1, bold=True),
        Spacer(1, 1.5 * mm),
        facts(pairs, BODY + 0.5, label_width=26 * mm, total=wide - 34 * mm),
    ]
    table = Table([[left, qr(view.batch_code, 30 * mm)]], colWidths=[wide - 31 * mm, 31 * mm])
    table.setStyle(
        TableStyle(
            [
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 0),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ]
        )
    )
    return table


def _lye(view: BatchRecord) -> list[tuple[str, str]]:
    if view.superfat_nominal_ppm is None:
        return [("lye", "none: no fats are saponified in this batch")]
    actual = view.superfat_actual_ppm
    purity = f", purity {show_share(view.alkali_purity_ppm)}" if view.alkali_purity_ppm else ""
    weighed = f"{show_mass(view.alkali_mg, view.units)} of {view.alkali_kind}{purity}" if view.alkali_kind else ""
    return [
        ("superfat meant", f"{show_share(view.superfat_nominal_ppm)} of the fats' alkali demand withheld"),
        ("superfat as weighed", show_share(actual, 2) if actual is not None else "not everything is weighed yet"),
        ("fats", show_mass(view.fats_mg, view.units)),
        ("alkali", weighed or "not weighed yet"),
        ("water and other liquids", show_mass(view.water_mg, view.units)),
        ("lye concentration", show_share(view.lye_concentration_ppm) if view.lye_concentration_ppm else ""),
    ]


def _quantity(value: int | None, pieces: bool, units: str) -> str:
    if value is None:
        return ""
    return f"{value} pcs" if pieces else show_mass(value, units)


def _materials(view: BatchRecord, wide: float) -> Table:
    def origin(one: UsedMaterial) -> str:
        number = one.supplier_lot or {"own": "own growing", "batch": "own making"}.get(one.origin, "number unknown")
        return f"{one.supplier or ''}, {number}"

    rows = [
        (
            str(one.number or ""),
            one.material + (f"\n{one.inci}" if one.inci else ""),
            one.lot_code,
            origin(one) + (f"; {one.certificate}" if one.certificate else ""),
            _quantity(one.target, one.pieces, view.units),
            _quantity(one.used, one.pieces, view.units),
            f"{one.weighed_by}, {one.weighed_at[:16].replace('T', ' ')}",
        )
        for one in view.materials
    ]
    shares = (0.045, 0.22, 0.085, 0.29, 0.1, 0.1, 0.16)
    table = grid(
        (
            "line",
            "material and INCI name",
            "lot",
            "supplier, their number; figure used",
            "target",
            "weighed",
            "by, UTC",
        ),
        rows,
        [wide * share for share in shares],
        BODY - 0.5,
        right=(4, 5),
        bold=(2, 5),
    )
    return table


def _readings(view: BatchRecord, wide: float) -> Table:
    rows = [(show_date(r.on), r.at or "", r.what, r.value, r.by, str(r.entry)) for r in view.readings]
    shares = (0.12, 0.08, 0.2, 0.38, 0.14, 0.08)
    return grid(
        ("on", "at", "what", "value", "by", "entry"), rows, [wide * s for s in shares], BODY, right=(5,), bold=(3,)
    )


def _yield(view: BatchRecord, wide: float) -> list[Flowable]:
    units = view.units
    lost = view.mass_in_mg - view.mass_out_mg if view.mass_out_mg is not None else None
    pairs = [
        ("went in", show_mass(view.mass_in_mg, units)),
        ("came out", show_mass(view.mass_out_mg, units) if view.mass_out_mg is not None else "not all weighed"),
        ("lost to pot and air", show_mass(lost, units) if lost is not None else ""),
        ("bars planned", str(view.bars_planned or "")),
        ("bars cut", str(view.bars_cut or "none yet")),
        ("declared weight per bar", show_mass(view.net_weight_mg, units) if view.net_weight_mg else ""),
    ]
    found: list[Flowable] = [facts(pairs, BODY, label_width=46 * mm, total=wide)]
    if view.yields:
        rows = [
            (
                one.lot_code,
                one.material,
                _quantity(one.quantity, one.pieces, units),
                show_mass(one.mass_mg, units) if one.mass_mg is not None else "not weighed",
                show_date(one.on),
                {"passed": "passed for packing"}.get(one.status, one.status),
                one.place,
            )
            for one in view.yields
        ]
        shares = (0.11, 0.21, 0.1, 0.12, 0.12, 0.13, 0.21)
        found += [
            Spacer(1, 1.5 * mm),
            grid(
                ("lot", "what", "how much", "weight", "on", "status", "here now"),
                rows,
                [wide * s for s in shares],
                BODY,
                right=(2, 3),
                bold=(0,),
            ),
        ]
    return found


def _labels(view: BatchRecord, wide: float) -> Table:
    rows = [
        (show_date(r.on), r.market.upper(), r.layout, str(r.count), r.text_digest[:16], r.by, str(r.entry))
        for r in view.labels
    ]
    shares = (0.13, 0.1, 0.22, 0.1, 0.21, 0.16, 0.08)
    return grid(
        ("on", "market", "layout", "issued", "digest of the text", "by", "entry"),
        rows,
        [wide * s for s in shares],
        BODY,
        right=(3, 6),
    )


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
    shares = (0.13, 0.3, 0.16, 0.33, 0.08)
    return grid(
        ("on", "decision", "by", "reason", "entry"), rows, [wide * s for s in shares], BODY, right=(4,), bold=(1,)
    )


def _whereabouts(view: BatchRecord, wide: float) -> Table:
    rows = [
        (
            str(one.count),
            "came back" if one.where == "returned" and one.left else one.where,
            one.detail,
            show_date(one.on) if one.on else "",
        )
        for one in view.whereabouts
    ]
    return grid(
        ("bars", "where", "place, customer or reason", "on"),
        rows,
        [wide * s for s in (0.1, 0.22, 0.5, 0.18)],
        BODY,
        right=(0,),
        bold=(0,),
    )


def _papers(view: BatchRecord, wide: float) -> Table:
    rows = [(one.name, one.kind, one.subject, one.sha256) for one in view.attachments]
    return grid(("name", "kind", "of", "SHA-256"), rows, [wide * s for s in (0.2, 0.13, 0.11, 0.56)], BODY - 0.5)
