"""The recall report: the first page alone must do for the telephone."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer

from ledger.documents.page import Sheet, build, escape, grid, heading, para, style
from ledger.domain.dates import show_date
from ledger.domain.quantity import show_mass
from ledger.views.recall import RecallAnswer

BODY = 9.5
HEAD = 12.5
BIG = 20


def draw_recall(view: RecallAnswer, *, paper: str = "A4") -> bytes:
    """The report as a PDF, marked where it is an exercise. Raises Refused like the page."""
    mark = "EXERCISE" if view.exercise else None
    code = f"Recall {', '.join(view.asked)}"
    sheet = Sheet(paper, code, "Recall report", view.business, view.printed_from, mark)
    wide = sheet.width
    story: list[Flowable] = [
        Paragraph(escape(", ".join(view.asked), "number asked for"), style(BIG, bold=True, leading=1.15)),
        para(_sentence(view), HEAD),
    ]
    story.append(Spacer(1, 2 * mm))
    story.append(_lots(view, wide))
    story += heading("Where every bar is", HEAD)
    story.append(_totals(view, wide))
    story.append(
        para(
            "Everything of it that is here was put on hold with this answer."
            if view.held
            else "Nothing was put on hold by this answer.",
            BODY,
        )
    )
    story += heading("Whom to call", HEAD)
    story.append(_call(view, wide) if view.call else para("Nobody has bars of it.", BODY))
    story += heading("Cannot be excluded", HEAD)
    if view.cannot_exclude:
        story.append(
            grid(
                ("what", "why"),
                [(one.what, one.why) for one in view.cannot_exclude],
                [wide * 0.45, wide * 0.55],
                BODY,
            )
        )
    else:
        story.append(para("Nothing: every lot of it has a number, and every bar a batch.", BODY))
    story += heading("Batches reached", HEAD)
    story.append(_batches(view, wide) if view.batches else para("It went into no batch.", BODY))
    story += heading("Bars, place by place", HEAD)
    story.append(_bars(view, wide) if view.bars else para("No bars were made of it.", BODY))
    if view.bulk:
        story += heading("Loose material made from it that is here", HEAD)
        rows = [
            (
                b.lot_code,
                b.material,
                b.place,
                str(b.on_hand) if b.pieces else show_mass(b.on_hand, view.units),
                b.status,
            )
            for b in view.bulk
        ]
        widths = [wide * s for s in (0.15, 0.33, 0.2, 0.16, 0.16)]
        story.append(
            grid(("lot", "material", "where", "quantity", "status"), rows, widths, BODY, right=(3,), bold=(0,))
        )
    return build(story, sheet)


def _sentence(view: RecallAnswer) -> str:
    totals, bars = view.totals, [one for one in view.batches if one.yields_bars]
    batches = f"{len(bars)} {'batch' if len(bars) == 1 else 'batches'} of soap"
    return (
        f"{view.lots[0].material}: {batches}, {totals.made} bars made. "
        f"{totals.on_hand + totals.retained + totals.returned} are here, {totals.at_stall} at a stall, "
        f"{totals.sold + totals.dispatched + totals.given} are with customers."
    )


def _lots(view: RecallAnswer, wide: float) -> Flowable:
    def much(quantity: int, pieces: bool) -> str:
        return str(quantity) if pieces else show_mass(quantity, view.units)

    rows = [
        (
            one.lot_code,
            one.supplier_lot or "unknown",
            one.material,
            one.supplier or "",
            show_date(one.received_on),
            much(one.received, one.pieces),
            much(one.on_hand, one.pieces),
            one.status,
        )
        for one in view.lots
    ]
    shares = (0.08, 0.14, 0.19, 0.19, 0.12, 0.1, 0.09, 0.09)
    heads = ("lot", "their number", "material", "supplier", "received", "quantity", "left", "status")
    return grid(heads, rows, [wide * s for s in shares], BODY, right=(5, 6), bold=(0, 1))


def _totals(view: RecallAnswer, wide: float) -> Flowable:
    t = view.totals
    heads = (
        "made",
        "on hand",
        "at a stall",
        "retained",
        "returned",
        "sold",
        "dispatched",
        "given",
        "wasted",
        "unexplained",
    )
    values = (
        t.made, t.on_hand, t.at_stall, t.retained, t.returned, t.sold, t.dispatched, t.given, t.wasted, t.unexplained
    )  # fmt: skip
    row = [str(value) for value in values]
    every = range(len(heads))
    return grid(
        heads,
        [row],
        [wide * s for s in (0.08, 0.09, 0.095, 0.1, 0.1, 0.08, 0.12, 0.085, 0.095, 0.145)],
        BODY + 1,
        right=tuple(every),
        bold=tuple(every),
    )


def _call(view: RecallAnswer, wide: float) -> Flowable:
    rows = [
        (
            one.name,
            one.phone or "no number kept",
            ", ".join(word for word in (one.email, one.address) if word),
            str(one.bars),
            ", ".join(one.batches),
            show_date(one.last_on),
        )
        for one in view.call
    ]
    shares = (0.21, 0.16, 0.28, 0.07, 0.16, 0.12)
    heads = ("name", "phone", "email, address", "bars", "batches", "last on")
    return grid(heads, rows, [wide * s for s in shares], BODY, right=(3,), bold=(0, 1))


def _batches(view: RecallAnswer, wide: float) -> Flowable:
    rows = [
        (
            one.batch_code,
            one.product,
            show_date(one.made_on),
            str(one.used) if one.pieces else show_mass(one.used, view.units),
            str(one.bars_made) if one.yields_bars else "none",
            one.status,
            " > ".join(one.through[:-1]),
        )
        for one in view.batches
    ]
    shares = (0.11, 0.22, 0.12, 0.1, 0.06, 0.14, 0.25)
    heads = ("batch", "product", "made", "took", "bars", "status", "reached through")
    return grid(heads, rows, [wide * s for s in shares], BODY, right=(3, 4), bold=(0,))


def _bars(view: RecallAnswer, wide: float) -> Flowable:
    rows = [
        (
            one.batch_code,
            one.product,
            str(one.count),
            one.where,
            one.detail,
            show_date(one.on) if one.on else "",
            one.contact or "",
        )
        for one in view.bars
    ]
    shares = (0.11, 0.2, 0.06, 0.13, 0.18, 0.12, 0.2)
    heads = ("batch", "product", "bars", "where", "place or customer", "on", "contact")
    return grid(heads, rows, [wide * s for s in shares], BODY, right=(2,), bold=(0,))
