"""Sales with their lines, payments and fees; what was promised and agreed; prices and taxes; invoices."""

from datetime import date

from sqlalchemy import String
from sqlmodel import Field

from ledger.storage.tables.entry import Fact
from ledger.units.words import FeeKind, InvoiceKind, LineKind, PaidBy, SaleKind


class CustomerTerms(Fact, table=True):
    """What was agreed with a customer; the latest counts."""

    __tablename__ = "customer_terms"
    customer_id: int
    on: date
    consignment: int = 0
    commission_ppm: int | None = None
    reduction_ppm: int | None = None
    pay_days: int | None = None
    country: str | None = None


class Price(Fact, table=True):
    """A price from a day on, for one bar or for so many together; empty ends it."""

    recipe_id: int | None = None
    place_id: int | None = None
    customer_id: int | None = None
    on: date
    bars: int = 1
    price_minor: int | None = None


class TaxRate(Fact, table=True):
    """The share of tax in a price from a day on; empty ends it."""

    __tablename__ = "tax_rate"
    recipe_id: int | None = None
    place_id: int | None = None
    customer_id: int | None = None
    country: str | None = None
    on: date
    rate_ppm: int | None = None
    name: str


class CustomerOrder(Fact, table=True):
    """Bars promised to a customer by a day."""

    __tablename__ = "customer_order"
    customer_id: int
    on: date
    due_on: date
    note: str | None = None


class OrderLine(Fact, table=True):
    """So many bars of a product, or of one batch of it; below zero: no longer."""

    __tablename__ = "order_line"
    order_id: int
    recipe_id: int
    lot_id: int | None = None
    batch_id: int | None = None  # where it is not cut yet
    bars: int
    price_minor: int | None = None  # of one


class OrderEnd(Fact, table=True):
    """A promise that somebody ended."""

    __tablename__ = "order_end"
    order_id: int
    on: date
    by: str
    reason: str


class Sale(Fact, table=True):
    """What changed hands on a day; a return or a credit takes from one that was."""

    on: date
    kind: SaleKind = Field(sa_type=String)
    place_id: int | None = None
    customer_id: int | None = None
    order_id: int | None = None
    whom: str | None = None
    terms: str | None = None
    pay_by: date | None = None


class SaleLine(Fact, table=True):
    """Bars of one batch, or something else on a sale; its amount is gross less the reduction, any tax within."""

    __tablename__ = "sale_line"
    sale_id: int
    kind: LineKind = Field(sa_type=String)
    lot_id: int | None = None
    movement_id: int | None = None
    of_line_id: int | None = None  # of a return or a credit: the line it takes from
    bars: int = 0
    gross_minor: int | None = None  # None: never told
    reduction_minor: int = 0
    tax_ppm: int | None = None
    tax_minor: int | None = None
    words: str | None = None


class Payment(Fact, table=True):
    """What was paid of a sale; below zero: paid back."""

    sale_id: int
    on: date
    way: PaidBy = Field(sa_type=String)
    amount_minor: int
    float_minor: int | None = None
    note: str | None = None


class Fee(Fact, table=True):
    """What selling cost."""

    sale_id: int | None = None
    place_id: int | None = None
    customer_id: int | None = None
    on: date
    kind: FeeKind = Field(sa_type=String)
    amount_minor: int
    note: str | None = None


class Invoice(Fact, table=True):
    """An invoice or a credit note; its number follows the one before."""

    number: int
    kind: InvoiceKind = Field(sa_type=String)
    on: date
    customer_id: int
    of_invoice_id: int | None = None
    pay_by: date | None = None


class InvoiceSale(Fact, table=True):
    """A sale that an invoice or a credit note is over."""

    __tablename__ = "invoice_sale"
    invoice_id: int
    sale_id: int
