"""The list of prices as a page: each product with its price large, and the price of a kilogram where it is asked."""

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer, Table

from ledger.documents.kit.blocks import heading
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, Type, build, para, plain
from ledger.rows.settings import PrintedFrom
from ledger.units.dates import show_date
from ledger.views.sale.price_list import PriceList

TYPE = Type(large=26, head=14, body=10)
_NET, _PRICE, _BY_WEIGHT = 34 * mm, 30 * mm, 36 * mm


def draw_price_list(found: PriceList, *, business: str, printed_from: PrintedFrom, paper: str = "A4") -> bytes:
    """The list as a PDF; it hangs at a stall or goes to a shop."""
    found = printable(found)
    sheet = Sheet(paper, f"Prices from {show_date(found.on)}", "Price list", business, printed_from, TYPE)
    story: list[Flowable] = [
        para(business, TYPE.large, bold=True, leading=1.1),
        para(
            f"Prices {f'at {found.where} ' if found.where else ''}from {show_date(found.on)}, taxes included", TYPE.head
        ),
        Spacer(1, 7 * mm),
    ]
    rows = [
        [
            para(one.product, TYPE.head, bold=True),
            para(one.net_quantity, TYPE.body, right=True),
            para(one.price, TYPE.head, bold=True, right=True),
            para(one.unit_price, TYPE.body, right=True),
        ]
        for one in found.priced
    ]
    wide = sheet.width - _NET - _PRICE - _BY_WEIGHT
    table = Table(rows, colWidths=[wide, _NET, _PRICE, _BY_WEIGHT], hAlign="LEFT")
    table.setStyle(
        plain(
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("TOPPADDING", (0, 0), (-1, -1), 2.4 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2.8 * mm),
            ("LINEABOVE", (0, 0), (-1, 0), 0.8, black),
            ("LINEBELOW", (0, 0), (-1, -1), HAIR, GREY),
        )
    )
    story.append(table)
    if found.offers:
        story += [*heading("Together", TYPE.head), *(para(one, TYPE.head) for one in found.offers)]
    return build(story, sheet)
