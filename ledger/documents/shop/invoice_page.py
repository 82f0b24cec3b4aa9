"""An invoice or a credit note as a page: one line for each batch, the amounts by rate, what is to be paid by when."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import grid
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, build, para, plain
from ledger.documents.shop.parties import TYPE, parties, seller_lines
from ledger.units.dates import show_date
from ledger.units.prices import show_price
from ledger.views.shop.invoice import InvoiceLine, InvoiceView
from ledger.views.shop.parcel import address_lines


def draw_invoice(view: InvoiceView, *, words: str = "", size: str = "A4") -> bytes:
    """The invoice as a PDF; `words` stand at its foot."""
    view = printable(view)
    sheet = Sheet(size, view.title, view.title, view.business, view.printed_from, TYPE)
    seller = seller_lines(view) + ([f"Tax number {view.tax_number}"] if view.tax_number else [])
    facts = [f"Date {show_date(view.on)}"]
    facts += [f"for invoice {view.of_number}"] if view.of_number else []
    facts += _days("Supplied", [one for one in view.lines if one.amount_minor >= 0])
    facts += _days("Taken back", [one for one in view.lines if one.amount_minor < 0])
    customer = [view.customer, *address_lines(view.customer_address)]
    story: list[Flowable] = parties(sheet, title=view.title, seller=seller, customer=customer, facts=facts)
    story += [_lines(view, sheet.width), Spacer(1, 4 * mm), _sums(view, sheet.width)]
    story += _foot(view, words)
    return build(story, sheet)


def _days(what: str, lines: Sequence[InvoiceLine]) -> list[str]:
    """From which day to which; nothing where there is no such line."""
    days = sorted({one.on for one in lines})
    return [f"{what} {' to '.join(map(show_date, dict.fromkeys((days[0], days[-1]))))}"] if days else []


def _money(view: InvoiceView, minor: int | None) -> str:
    if minor is None:
        return ""
    shown = show_price(abs(minor), view.currency, view.country)
    return f"−{shown}" if minor < 0 else shown


def _rate(ppm: int) -> str:
    """A rate of tax as it is printed, not to be torn: 23 %, 5.5 %."""
    return f"{ppm / 10_000:g}\u00a0%"


def _lines(view: InvoiceView, wide: float) -> Table:
    taxed = any(one.tax_ppm is not None for one in view.lines)
    less = any(one.reduction_minor for one in view.lines)
    several = len({one.on for one in view.lines}) > 1
    heads = [
        ("day", 0.13, several),
        ("what", 0.34 + 0.13 * (not several) + 0.1 * (not less) + 0.1 * (not taxed), True),
        ("batch", 0.12, True),
        ("bars", 0.07, True),
        ("price of one", 0.13, True),
        ("off", 0.1, less),
        ("tax", 0.1, taxed),
        ("amount", 0.13, True),
    ]
    shown = [i for i, (_, _, kept) in enumerate(heads) if kept]
    scale = wide / sum(heads[i][1] for i in shown)

    def cells(one: InvoiceLine) -> list[str]:
        every = [
            show_date(one.on),
            one.what,
            one.batch or "",
            str(one.bars).replace("-", "−") if one.bars else "",
            _money(view, one.each_minor) if one.bars else "",
            _money(view, one.reduction_minor) if one.reduction_minor else "",
            _rate(one.tax_ppm) if one.tax_ppm is not None else "",
            _money(view, one.amount_minor),
        ]
        return [every[i] for i in shown]

    right = [place for place, i in enumerate(shown) if i >= 3]
    return grid(
        [heads[i][0] for i in shown],
        [cells(one) for one in view.lines],
        [heads[i][1] * scale for i in shown],
        TYPE.body,
        right=right,
    )


def _sums(view: InvoiceView, wide: float) -> Flowable:
    rows = []
    taxed = [one for one in view.rates if one.tax_ppm is not None]
    for one in view.rates if taxed else ():
        if one.tax_ppm is None:
            rows.append(("Without tax", _money(view, one.gross_minor), False))
        else:
            rows.append((f"Net at {_rate(one.tax_ppm)}", _money(view, one.net_minor), False))
            rows.append((f"Tax at {_rate(one.tax_ppm)}", _money(view, one.tax_minor), False))
    if view.commission_minor:
        rows.append(("Together", _money(view, view.total_minor + view.commission_minor), False))
        words = "kept" if view.commission_minor > 0 else "given back"
        rows.append((f"Commission {words} by the shop", _money(view, -view.commission_minor), False))
    rows.append(("Total", _money(view, view.total_minor), True))
    if view.paid_minor:
        rows.append(("Paid" if view.paid_minor > 0 else "Paid back", _money(view, -view.paid_minor), False))
        rows.append(
            ("To be paid" if view.to_pay_minor >= 0 else "To be paid back", _money(view, abs(view.to_pay_minor)), True)
        )
    cells = [
        [
            "",
            para(words, TYPE.head if bold else TYPE.body, bold=bold),
            para(amount, TYPE.head if bold else TYPE.body, bold=bold, right=True),
        ]
        for words, amount, bold in rows
    ]
    table = Table(cells, colWidths=[wide * 0.45, wide * 0.35, wide * 0.2])
    rules = [("LINEABOVE", (1, i), (-1, i), HAIR, GREY) for i, (_, _, bold) in enumerate(rows) if bold and i]
    table.setStyle(plain(("BOTTOMPADDING", (0, 0), (-1, -1), 2.4), ("TOPPADDING", (0, 0), (-1, -1), 1.8), *rules))
    return KeepTogether([table])


def _foot(view: InvoiceView, words: str) -> list[Flowable]:
    said = []
    if view.pay_by and view.to_pay_minor > 0:
        said.append(f"To be paid by {show_date(view.pay_by)}.")
    said += [words] if words else []
    return [Spacer(1, 8 * mm), *(para(one, TYPE.body) for one in said)] if said else []
