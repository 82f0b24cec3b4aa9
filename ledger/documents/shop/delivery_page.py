"""A delivery note: what went, batch by batch, with its best-before date and weight, and room for who received it."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import grid
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, build, para, plain
from ledger.documents.shop.parties import TYPE, parties, seller_lines
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.shop.delivery import Delivery
from ledger.views.shop.parcel import address_lines

_STORED = "Keep dry, cool and out of the sun."  # common practice, no source


def draw_delivery(view: Delivery, *, size: str = "A4") -> bytes:
    """The delivery note as a PDF."""
    view = printable(view)
    sheet = Sheet(size, view.name.capitalize(), "Delivery note", view.business, view.printed_from, TYPE)
    seller, customer = seller_lines(view), [view.customer, *address_lines(view.customer_address)]
    customer += [f"Telephone {view.customer_phone}"] if view.customer_phone else []
    facts = [f"{view.name.capitalize()}, {show_date(view.on)}"]
    facts += [f"Order {view.order}"] if view.order else []
    facts += [view.note] if view.note else []
    story: list[Flowable] = parties(sheet, title="Delivery note", seller=seller, customer=customer, facts=facts)
    wide = sheet.width
    story.append(
        grid(
            ("bars", "product", "batch", "net weight of one", "best before"),
            [(str(one.bars), one.product, one.batch, one.net_weight, one.best_before) for one in view.lines],
            [wide * share for share in (0.08, 0.28, 0.12, 0.18, 0.34)],
            TYPE.body,
            right=(0,),
            bold=(0, 2),
        )
    )
    story += [
        para(f"{count(view.bars, 'bar')} together.", TYPE.head, bold=True),
        Spacer(1, 4 * mm),
        para(
            "On sale or return: the bars stay ours until you count them."
            if view.consignment
            else "Sold; the invoice comes apart.",
            TYPE.body,
        ),
        para(f"{_STORED} Please keep this note: we call you by the batch codes if ever we must.", TYPE.body),
        Spacer(1, 14 * mm),
        _signed(wide),
    ]
    return build(story, sheet)


def _signed(wide: float) -> Flowable:
    """Two lines to be written on."""
    gap = 10 * mm
    half = (wide - gap) / 2
    cells = [
        [para("Packed by, date", TYPE.body), "", para("Received by, date; what was short or broken", TYPE.body)],
    ]
    table = Table(cells, colWidths=[half, gap, half])
    table.setStyle(
        plain(
            ("LINEABOVE", (0, 0), (0, 0), HAIR, GREY),
            ("LINEABOVE", (2, 0), (2, 0), HAIR, GREY),
            ("TOPPADDING", (0, 0), (-1, -1), 2),
        )
    )
    return KeepTogether([table])
