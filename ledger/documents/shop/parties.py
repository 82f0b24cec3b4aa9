"""What stands at the top of a delivery note and of an invoice: from whom, to whom, and what it is."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer, Table

from ledger.documents.kit.page import Sheet, Type, para, plain
from ledger.views.shop.delivery import Delivery
from ledger.views.shop.invoice import InvoiceView
from ledger.views.shop.parcel import address_lines

TYPE = Type(large=24, head=12, body=9.5)


def seller_lines(view: Delivery | InvoiceView) -> list[str]:
    """Who sells: the name she trades under, whoever answers for it if another, the address, the telephone."""
    lines = [view.business, *([view.seller.name] if view.seller.name != view.business else [])]
    lines += [one for one in address_lines(view.seller.address) if one not in lines]
    return lines + ([f"Telephone {view.phone}"] if view.phone else [])


def parties(sheet: Sheet, *, title: str, seller: list[str], customer: list[str], facts: list[str]) -> list[Flowable]:
    """The seller's lines and the customer's side by side, then the title with what is known beside it."""
    half = sheet.width / 2
    top = Table([[_lines("From", seller), _lines("To", customer)]], colWidths=[half, half])
    top.setStyle(plain(("RIGHTPADDING", (0, 0), (0, 0), 12)))
    head = Table(
        [[para(title, TYPE.large, bold=True), [para(one, TYPE.body, right=True) for one in facts]]],
        colWidths=[sheet.width * 0.55, sheet.width * 0.45],
    )
    head.setStyle(plain(("VALIGN", (0, 0), (-1, -1), "BOTTOM")))
    return [top, Spacer(1, 10 * mm), head, Spacer(1, 5 * mm)]


def _lines(what: str, lines: list[str]) -> list[Flowable]:
    told = [one for line in lines for one in line.split("\n") if one.strip()]
    first, *rest = told or [""]
    return [
        para(what, TYPE.body),
        para(first, TYPE.head, bold=True),
        *(para(one.strip(), TYPE.body) for one in rest),
    ]
