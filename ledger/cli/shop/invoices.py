"""What the commands of invoices take and do alike."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import say, say_wrapped
from ledger.cli.shop.words import read_number
from ledger.errors import BadInput
from ledger.reference.invoice_fields import InvoiceFields, invoice_fields
from ledger.rows.sell.invoice import invoice_numbered
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.views.shop.invoice import InvoiceView, invoice_view

Number = Annotated[str, typer.Argument(help="The number of the invoice, e.g. 7.", metavar="NUMBER")]
Sales = Annotated[
    str | None, typer.Option("--sales", help="Only these sales, e.g. 12,13 (all that are on none).", metavar="NUMBERS")
]


def read_sales(text: str | None) -> tuple[int, ...]:
    """The numbers of sales, between commas. Raises BadInput for one that stands twice, or is no number."""
    numbers = tuple(read_number(one, "sale") for one in (text or "").split(",") if one.strip())
    if text is not None and not numbers:
        raise BadInput("Which sales? Write their numbers, such as --sales 12,13.")
    if len({*numbers}) < len(numbers):
        raise BadInput("A sale stands twice in --sales; write each once.")
    return numbers


def fields_for(here: Desk, view: InvoiceView) -> InvoiceFields:
    """What such an invoice must bear in her country."""
    return invoice_fields(view.country, registered=view.registered, folder=here.path.absolute().parent)


def made_view(here: Desk, number: int) -> InvoiceView:
    """An invoice as it was known at its entry, whatever came since. Raises BadInput for one that is not there."""
    row = invoice_numbered(here.rows(), number)
    return invoice_view(here.rows_as_of(str(row.entry)), row, program=__version__)


def draw(here: Desk, view: InvoiceView, size: str) -> bytes:
    """The invoice as a PDF."""
    words = fields_for(here, view).words
    drawn: bytes = loaded("documents.shop.invoice_page").draw_invoice(view, words=words, size=size)
    return drawn


def say_made(view: InvoiceView) -> None:
    """What was made, what it comes to, and by when it is paid."""
    currency = view.currency
    by = f", to be paid by {show_date(view.pay_by)}" if view.pay_by else ""
    of = f" for invoice {view.of_number}" if view.of_number else ""
    say_wrapped(f"{view.title}{of} to {view.customer}: {show_money(view.total_minor, currency)}{by}.")
    for one in view.rates:
        if one.tax_ppm is not None:
            say(f"  {show_money(one.tax_minor, currency)} of it tax at {one.tax_ppm / 10_000:g} %.")
    if view.commission_minor:
        off = "is off already" if view.commission_minor > 0 else "is given back by the shop, and off already"
        say(f"  {show_money(abs(view.commission_minor), currency)} commission {off}.")
    if view.paid_minor:
        paid = f"{show_money(abs(view.paid_minor), currency)} was paid{' back' if view.paid_minor < 0 else ''}"
        say(f"  {paid} when it was made.")
