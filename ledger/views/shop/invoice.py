"""An invoice or a credit note as it reads: who and whom, what was sold, amounts by rate of tax, what is to be paid."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.markets import home_markets
from ledger.reference.invoice_fields import InvoiceFields
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.sell.invoice import InvoiceRow, sales_on, tax_number
from ledger.rows.sell.paid import fees, payments_of
from ledger.rows.sell.sale import LineRow, lines_of, sales_by_id
from ledger.rows.sell.tax import tax_rates
from ledger.rows.settings import PrintedFrom, Responsible, Settings, printed_from, settings
from ledger.units.words import InvoiceKind

_ELSE = {"other": "Other goods", "difference": "Difference", "carriage": "Carriage"}


class InvoiceLine(NamedTuple):
    """One line: bars of a product with their batch, or something else; amounts as they were booked, tax within."""

    sale: int
    on: date  # supplied, or taken back where the amount is below zero
    what: str
    batch: str | None
    bars: int
    each_minor: int | None  # where one price fits them all
    reduction_minor: int
    tax_ppm: int | None
    tax_minor: int | None
    amount_minor: int


class AtRate(NamedTuple):
    """What stands at one rate of tax; None: where none is booked."""

    tax_ppm: int | None
    net_minor: int
    tax_minor: int
    gross_minor: int


@dataclass(frozen=True)
class InvoiceView:
    """One invoice or credit note, as it was known in its entry."""

    number: int
    kind: InvoiceKind
    on: date
    of_number: int | None
    seller: Responsible
    business: str
    phone: str | None
    tax_number: str | None
    registered: bool
    customer: str
    customer_address: str | None
    lines: tuple[InvoiceLine, ...]
    rates: tuple[AtRate, ...]
    commission_minor: int  # kept by a shop on sale or return
    total_minor: int
    paid_minor: int
    pay_by: date | None
    currency: str
    country: str
    entry: int
    printed_from: PrintedFrom

    @property
    def title(self) -> str:
        """What it is called: Invoice 7."""
        return f"{self.kind.capitalize()} {self.number}"

    @property
    def to_pay_minor(self) -> int:
        """What is still to be paid; below zero: to be paid back."""
        return self.total_minor - self.paid_minor


def seller_of(own: Settings) -> Responsible:
    """Under which name and address she sells: that of the market of her country, else the first; empty for none."""
    laws = home_markets(own.addresses.keys(), own.country)
    return own.addresses[laws[0].address] if laws else Responsible(own.business, "")


def invoice_view(rows: Rows, invoice: InvoiceRow, *, program: str, sales: Sequence[int] | None = None) -> InvoiceView:
    """An invoice from rows as they were known at its entry; over these sales where it is still to be made."""
    own = settings(rows)
    numbers = sales_on(rows, [invoice.id])[invoice.id] if sales is None else sales
    lines = lines_of(rows, numbers)
    days = {number: sale.on for number, sale in sales_by_id(rows, numbers).items()}
    told = tuple(_line(number, days[number], one) for number in numbers for one in lines[number])
    card = contacts(rows, [invoice.customer_id])[invoice.customer_id]
    commission = sum(one.amount_minor for one in fees(rows, numbers) if one.kind == "commission")
    paid = sum(one.amount_minor for ones in payments_of(rows, numbers).values() for one in ones)
    number = tax_number(rows)
    rated = any(one.rate_ppm is not None for one in tax_rates(rows))
    return InvoiceView(
        invoice.number,
        invoice.kind,
        invoice.on,
        invoice.of_number,
        seller_of(own),
        own.business,
        own.phone,
        number,
        bool(number) or rated,
        card.name,
        card.address,
        told,
        at_rates(told),
        commission,
        sum(one.amount_minor for one in told) - commission,
        paid,
        invoice.pay_by,
        own.currency,
        own.country,
        invoice.entry,
        printed_from(rows, program, entry=invoice.entry),
    )


def _line(sale: int, on: date, line: LineRow) -> InvoiceLine:
    gross = line.gross_minor or 0
    each = gross // line.bars if line.bars and gross % line.bars == 0 else None
    what = line.product or line.words or _ELSE.get(line.kind, line.kind)
    return InvoiceLine(
        sale,
        on,
        what,
        line.batch,
        line.bars,
        each,
        line.reduction_minor,
        line.tax_ppm,
        line.tax_minor,
        gross - line.reduction_minor,
    )


def at_rates(lines: Sequence[InvoiceLine]) -> tuple[AtRate, ...]:
    """The amounts by rate, the highest first; those without tax last."""
    found: dict[int | None, tuple[int, int]] = {}
    for one in lines:
        tax, gross = found.get(one.tax_ppm, (0, 0))
        found[one.tax_ppm] = (tax + (one.tax_minor or 0), gross + one.amount_minor)
    order = sorted(found, key=lambda ppm: (ppm is None, -(ppm or 0)))
    return tuple(AtRate(ppm, found[ppm][1] - found[ppm][0], *found[ppm]) for ppm in order)


def lacking(view: InvoiceView, fields: InvoiceFields) -> tuple[str, ...]:
    """What such an invoice must bear and this one does not, a sentence for each with what to type."""
    there = {
        "seller address": bool(view.seller.address),
        "seller tax number": bool(view.tax_number),
        "customer address": bool(view.customer_address),
        "tax by rate": all(one.tax_ppm is not None for one in view.lines),
        "net by rate": True,
    }
    says = {
        "seller address": "your address; give it with: soapledger init --market 'MARKET=Name; street, town'",
        "seller tax number": "your tax number; give it with: soapledger tax set --number NUMBER",
        "customer address": f"the address of {view.customer}; give it with: soapledger customer edit --address ADDRESS",
        "tax by rate": "the tax of every line; some were booked without a rate: soapledger tax set",
    }
    return tuple(
        f"An invoice here must bear {says[field]} ({fields.source})."
        for field in fields.needs
        if not there.get(field, True)
    )
