"""The tables of a recall report: lots, batches, bars place by place, whom to call, what cannot be excluded."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Table

from ledger.documents.kit.blocks import grid
from ledger.documents.kit.fonts import BOLD, REGULAR, width
from ledger.documents.kit.page import Type, para, plain
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, whole
from ledger.units.words import Units
from ledger.views.recall.recall import CannotBeExcluded, RecallAnswer, ToCall
from ledger.views.recall.recall_people import left_out
from ledger.views.recall.recall_words import took_words, way_words

_CODES = 60  # of one customer in the table of whom to call
TYPE = Type(large=22, head=12.5, body=9.5)


def much(quantity: int, pieces: bool, units: Units) -> str:
    return str(quantity) if pieces else whole(show_mass(quantity, units))


def lots_table(view: RecallAnswer, wide: float) -> Table:
    rows = [
        (
            one.lot_code,
            one.supplier_lot or "unknown",
            one.material,
            one.supplier or "",
            whole(show_date(one.received_on)),
            much(one.received, one.pieces, view.units),
            much(one.on_hand, one.pieces, view.units),
            one.status,
        )
        for one in view.lots
    ]
    shares = (0.08, 0.15, 0.17, 0.17, 0.12, 0.11, 0.11, 0.09)
    heads = ("lot", "their number", "material", "supplier", "received", "quantity", "left", "status")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(5, 6), bold=(0, 1))


def asked_table(view: RecallAnswer, wide: float) -> Table:
    """The batches asked for by the code on their bars, or for their labels."""
    rows = [
        (
            one.batch_code,
            one.product,
            whole(show_date(one.made_on)),
            str(one.bars_made) if one.yields_bars else "–",
            one.status,
        )
        for one in view.batches
        if one.batch_code in (*view.bars_of, *view.labels_of)
    ]
    heads = ("batch", "product", "made", "bars", "status")
    return grid(heads, rows, [wide * s for s in (0.13, 0.4, 0.15, 0.09, 0.23)], TYPE.body, right=(3,), bold=(0,))


def totals_sum(view: RecallAnswer, wide: float) -> Table:
    """One sum that a listener can follow: made = the rest, with what is unexplained always shown."""
    t = view.totals
    parts = (
        ("made", t.made, ""),
        ("on hand", t.on_hand, "="),
        ("at a stall", t.at_stall, "+"),
        *((("at a shop", t.at_shop, "+"),) if t.at_shop else ()),
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


def notices_table(view: RecallAnswer, wide: float) -> Table:
    """Where a notice is put up, with the days between which the bars were sold there."""
    rows = [
        (one.place, str(one.bars), whole(show_date(one.first_on)), whole(show_date(one.last_on)))
        for one in view.notices
    ]
    heads = ("where", "bars", "first sold", "last sold")
    return grid(heads, rows, [wide * s for s in (0.5, 0.1, 0.2, 0.2)], TYPE.body, right=(1,), bold=(0,))


def batches_of(one: ToCall, most: int) -> str:
    """The codes of the batches somebody has bars of; of more than so many how many, since each place stands apart."""
    if len(one.batches) <= most:
        return "\n".join(one.batches)
    return f"{len(one.batches)} batches, each further on"


def few_codes(codes: Sequence[str], most: int) -> str:
    """Batch codes in a row; of more than so many how many, and between which."""
    if len(codes) <= most:
        return ", ".join(codes)
    return f"{len(codes)} batch codes, {codes[0]} to {codes[-1]}; each stands further on"


def phone_words(one: ToCall) -> str:
    """The telephone number on one line; or why there is none."""
    return whole(one.phone) if one.phone else "left out" if left_out(one) else "no number"


def call_table(view: RecallAnswer, wide: float) -> Table:
    """Who has bars, with a column to write in what was said."""
    rows = [
        (
            one.name,
            phone_words(one),
            "\n".join(word for word in (one.email, one.address) if word),
            str(one.bars or "–"),
            batches_of(one, _CODES),
            whole(show_date(one.last_on)),
            "",
        )
        for one in view.call
    ]
    shares = (0.165, 0.18, 0.22, 0.07, 0.115, 0.125, 0.125)
    heads = ("name", "phone", "email, address", "bars", "batches", "last on", "called at, answer")
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(3,), bold=(0, 1), row_height=10 * mm)


def doubts_table(found: Sequence[CannotBeExcluded], wide: float) -> Table:
    rows = [(one.what, one.why) for one in found]
    return grid(("what", "why"), rows, [wide * 0.45, wide * 0.55], TYPE.body)


def batches_table(view: RecallAnswer, wide: float) -> Table:
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


def bars_table(view: RecallAnswer, wide: float) -> Table:
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


def bulk_table(view: RecallAnswer, wide: float) -> Table:
    rows = [(b.lot_code, b.material, b.place, much(b.on_hand, b.pieces, view.units), b.status) for b in view.bulk]
    heads = ("lot", "material", "where", "quantity", "status")
    return grid(heads, rows, [wide * s for s in (0.1, 0.4, 0.2, 0.15, 0.15)], TYPE.body, right=(3,), bold=(0,))
