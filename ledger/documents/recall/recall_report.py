"""The recall report: the first page alone must do for the telephone."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, PageBreak, Paragraph, Spacer, Table

from ledger.documents.kit.blocks import grid, heading
from ledger.documents.kit.fonts import BOLD, REGULAR, printable, width
from ledger.documents.kit.page import Sheet, Type, build, para, plain
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, whole
from ledger.units.wording import count
from ledger.units.words import Units
from ledger.views.recall.recall import CannotBeExcluded, RecallAnswer
from ledger.views.recall.recall_words import differences_words, grams_words, took_words, way_words

TYPE = Type(large=22, head=12.5, body=9.5)
_ON_PAGE_ONE = 5  # of what cannot be excluded; more of it begins the second page


def draw_recall(view: RecallAnswer, *, paper: str = "A4") -> bytes:
    """The report as a PDF, marked where it is an exercise."""
    view = printable(view)
    mark = "EXERCISE" if view.exercise else None
    more = f" and {len(view.asked) - 1} more" if len(view.asked) > 1 else ""
    code = f"Recall {view.asked[0]}{more}"
    sheet = Sheet(paper, code, "Recall report", view.business, view.printed_from, TYPE, mark)
    wide = sheet.width
    story = [*_first_page(view, wide), PageBreak()]
    if rest := view.cannot_exclude[_ON_PAGE_ONE:]:
        story += heading("Cannot be excluded either", TYPE.head)
        story.append(_doubts(rest, wide))
    story += heading("Batches reached", TYPE.head)
    story.append(_batches(view, wide) if view.batches else _say("It went into no batch."))
    story += heading("Bars, place by place", TYPE.head)
    story.append(_bars(view, wide) if view.bars else _say("No bars were made of it."))
    story += [_say(line) for line in differences_words(view)]
    story += [_say(f"Of batch {one.batch_code}, {one.words}.") for one in view.back_on_sale]
    if view.bulk:
        story += heading("Loose material made from it that is here", TYPE.head)
        story.append(_bulk(view, wide))
    return build(story, sheet)


def _no_doubts(view: RecallAnswer) -> str:
    """What was looked through and found to hold nothing more: said of just what there was to look through."""
    materials = " or ".join(dict.fromkeys(one.material for one in view.lots))
    looked = [f"no other lot of {materials} is without a number"] if view.lots else []
    if view.bars:
        looked += [
            "no bar of it was missed at a count",
            "no complaint booked since the first of these bars was cut is without a batch",
        ]
    return f"Nothing beside these: {', '.join(looked)}."


def _say(text: str, *, bold: bool = False) -> Paragraph:
    return para(text, TYPE.body, bold=bold)


def _first_page(view: RecallAnswer, wide: float) -> list[Flowable]:
    """What is said and asked on the telephone: the lot, the codes on the bars, the totals, whom to call."""
    codes = ", ".join(one.batch_code for one in view.batches if one.yields_bars)
    held = "All of it that is here was put on hold." if view.held else "Nothing was put on hold by this answer."
    if view.stopped and not view.stoppable and (not view.held or "rejected" in view.stopped):
        held = f"All of it that is here is {' or '.join(view.stopped)}."
    doubts = len(view.cannot_exclude)
    few = view.cannot_exclude[:_ON_PAGE_ONE]
    story: list[Flowable] = [
        para(", ".join(view.asked), TYPE.large, bold=True, leading=1.15),
        Spacer(1, 1 * mm),
        para(_sentence(view), TYPE.head),
        Spacer(1, 3 * mm),
        _asked(view, wide) if view.bars_of else _lots(view, wide),
    ]
    if codes:
        story += heading("Batch codes on the bars", TYPE.head)
        story.append(para(codes, TYPE.head, bold=True))
    story += heading("Where every bar is", TYPE.head)
    story += [_totals(view, wide), Spacer(1, 2 * mm), _say(held, bold=True)]
    story += heading("Cannot be excluded", TYPE.head)
    story.append(_doubts(few, wide) if few else _say(_no_doubts(view)))
    if doubts > len(few):
        story.append(_say(f"{doubts - len(few)} more cannot be excluded; they stand first overleaf.", bold=True))
    story += heading("Whom to call", TYPE.head)
    story.append(_call(view, wide) if view.call else _say("Nobody known by name has bars of it."))
    story += [_say(f"Of lot {one.lot_code}: {grams_words(one, view.units)}.") for one in view.lots]
    if view.notices:
        story += heading("For a notice: sold to buyers nobody knows by name", TYPE.head)
        story.append(_notices(view, wide))
    if view.totals.sold:
        sold = f"{view.totals.sold} bars were sold to buyers who are not customers on the books."
        if any(one.complaint for one in view.call):
            sold += " The bar of whoever complained is counted where it went, and not again."
        story += [Spacer(1, 2 * mm), _say(sold)]
    return story


def _sentence(view: RecallAnswer) -> str:
    totals, bars = view.totals, [one for one in view.batches if one.yields_bars]
    batches = f"{len(bars)} {'batch' if len(bars) == 1 else 'batches'} of soap"
    named = {one.batch_code: one.product for one in view.batches}
    asked = [named[code] for code in view.bars_of]
    what = " and ".join(dict.fromkeys([*(one.material for one in view.lots), *asked]))
    return (
        f"{what}: {batches}, {count(totals.made, 'bar')} made. "
        f"{totals.on_hand + totals.retained + totals.returned} are here, {totals.at_stall} at a stall, "
        f"{totals.sold + totals.dispatched + totals.given} are with customers."
    )


def _much(quantity: int, pieces: bool, units: Units) -> str:
    return str(quantity) if pieces else whole(show_mass(quantity, units))


def _lots(view: RecallAnswer, wide: float) -> Table:
    rows = [
        (
            one.lot_code,
            one.supplier_lot or "unknown",
            one.material,
            one.supplier or "",
            whole(show_date(one.received_on)),
            _much(one.received, one.pieces, view.units),
            _much(one.on_hand, one.pieces, view.units),
            one.status,
        )
        for one in view.lots
    ]
    shares = (0.08, 0.15, 0.17, 0.17, 0.12, 0.11, 0.11, 0.09)
    heads = ("lot", "their number", "material", "supplier", "received", "quantity", "left", "status")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(5, 6), bold=(0, 1))


def _asked(view: RecallAnswer, wide: float) -> Table:
    """The batches asked for by the code on their bars."""
    rows = [
        (
            one.batch_code,
            one.product,
            whole(show_date(one.made_on)),
            str(one.bars_made) if one.yields_bars else "–",
            one.status,
        )
        for one in view.batches
        if one.batch_code in view.bars_of
    ]
    heads = ("batch", "product", "made", "bars", "status")
    return grid(heads, rows, [wide * s for s in (0.13, 0.4, 0.15, 0.09, 0.23)], TYPE.body, right=(3,), bold=(0,))


def _totals(view: RecallAnswer, wide: float) -> Table:
    """One sum that a listener can follow: made = the rest, with what is unexplained always shown."""
    t = view.totals
    parts = (
        ("made", t.made, ""),
        ("on hand", t.on_hand, "="),
        ("at a stall", t.at_stall, "+"),
        ("retained", t.retained, "+"),
        ("returned", t.returned, "+"),
        ("sold", t.sold, "+"),
        ("dispatched", t.dispatched, "+"),
        ("given", t.given, "+"),
        ("wasted", t.wasted, "+"),
        *((("reworked", t.reworked, "+"),) if t.reworked else ()),
        ("unexplained", t.unexplained, "+"),
    )
    signs = 3.5 * mm
    needed = [max(width(str(many), BOLD, TYPE.head), width(name, REGULAR, TYPE.body)) for name, many, _ in parts]
    spare = (wide - signs * (len(parts) - 1) - sum(needed)) / len(parts)
    numbers: list[Flowable | str] = []
    names: list[Flowable | str] = []
    widths: list[float] = []
    for (name, many, sign), room in zip(parts, needed, strict=True):
        if sign:
            numbers.append(para(sign, TYPE.head))
            names.append("")
            widths.append(signs)
        numbers.append(para(str(many), TYPE.head, bold=True))
        names.append(para(name, TYPE.body))
        widths.append(room + spare)
    table = Table([numbers, names], colWidths=widths, hAlign="LEFT")
    table.setStyle(plain())
    return table


def _notices(view: RecallAnswer, wide: float) -> Table:
    """Where a notice is put up, with the days between which the bars were sold there."""
    rows = [
        (one.place, str(one.bars), whole(show_date(one.first_on)), whole(show_date(one.last_on)))
        for one in view.notices
    ]
    heads = ("where", "bars", "first sold", "last sold")
    return grid(heads, rows, [wide * s for s in (0.5, 0.1, 0.2, 0.2)], TYPE.body, right=(1,), bold=(0,))


def _call(view: RecallAnswer, wide: float) -> Table:
    """Who has bars, with a column to write in what was said."""
    rows = [
        (
            one.name,
            whole(one.phone or "no number"),
            "\n".join(word for word in (one.email, one.address) if word),
            str(one.bars or "–"),
            "\n".join(one.batches),
            whole(show_date(one.last_on)),
            "",
        )
        for one in view.call
    ]
    shares = (0.165, 0.18, 0.22, 0.07, 0.1, 0.125, 0.14)
    heads = ("name", "phone", "email, address", "bars", "batches", "last on", "called at, answer")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(3,), bold=(0, 1), row_height=10 * mm)


def _doubts(found: Sequence[CannotBeExcluded], wide: float) -> Table:
    rows = [(one.what, one.why) for one in found]
    return grid(("what", "why"), rows, [wide * 0.45, wide * 0.55], TYPE.body)


def _batches(view: RecallAnswer, wide: float) -> Table:
    rows = [
        (
            one.batch_code,
            one.product,
            whole(show_date(one.made_on)),
            took_words(one, view.units) or "–",
            str(one.bars_made) if one.yields_bars else "–",
            one.status,
            way_words(one) or (f"from {one.first}" if one.steps else "asked for"),
        )
        for one in view.batches
    ]
    shares = (0.11, 0.18, 0.12, 0.21, 0.06, 0.12, 0.2)
    heads = ("batch", "product", "made", "of it in the batch", "bars", "status", "reached")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(4,), bold=(0,))


def _bars(view: RecallAnswer, wide: float) -> Table:
    rows = [
        (
            one.batch_code,
            one.product,
            str(one.count).replace("-", "−"),
            one.where,
            (one.detail if one.detail != one.where else "") + (f" ({one.contact})" if one.contact else ""),
            whole(show_date(one.on)) if one.on else "",
        )
        for one in view.bars
    ]
    shares = (0.1, 0.2, 0.07, 0.13, 0.37, 0.13)
    heads = ("batch", "product", "bars", "where", "place or customer, contact", "on")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(2,), bold=(0, 2))


def _bulk(view: RecallAnswer, wide: float) -> Table:
    rows = [(b.lot_code, b.material, b.place, _much(b.on_hand, b.pieces, view.units), b.status) for b in view.bulk]
    heads = ("lot", "material", "where", "quantity", "status")
    return grid(heads, rows, [wide * s for s in (0.1, 0.4, 0.2, 0.15, 0.15)], TYPE.body, right=(3,), bold=(0,))
