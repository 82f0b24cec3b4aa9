"""soapledger invoice make."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import On, Yes
from ledger.cli.kit.show import say, say_wrapped, warn_of
from ledger.cli.shop.invoices import Sales, fields_for, made_view, read_sales, say_made
from ledger.cli.shop.words import Shop
from ledger.operations.shop.invoices import make_invoice
from ledger.rows.people import CustomerCard, customer_by_code
from ledger.rows.sell.invoice import InvoiceRow
from ledger.rows.settings import printed_from
from ledger.units.quantity import parse_pieces
from ledger.views.shop.invoice import InvoiceView, invoice_view, lacking
from ledger.views.shop.to_invoice import sales_to_invoice


def command(
    ctx: typer.Context,
    customer: Shop,
    sales: Sales = None,
    number: Annotated[
        str | None, typer.Option("--number", help="The number of your very first invoice here (1).", metavar="NUMBER")
    ] = None,
    yes: Yes = False,
    on: On = None,
) -> None:
    """Invoice what was sold to a customer and is on none yet; never undone, only credited: invoice make tern-hall."""
    here = desk(ctx)
    only, first = read_sales(sales), parse_pieces(number, what="the number of the invoice") if number else None
    day = here.day(on)
    card = customer_by_code(here.rows(), customer)
    over = sales_to_invoice(here.rows(), card.id, card.name, on=day, only=only)
    draft = _draft(here, card, over)
    fields = fields_for(here, draft)
    warn_of(lacking(draft, fields), yes)
    made = make_invoice(here.book(), card.code, on=day, only=only, number=first)
    say_made(made_view(here, made.number))
    if fields.ask:
        say_wrapped(f"Ask your accountant: {fields.ask[:1].lower()}{fields.ask[1:]}")
    if draft.commission_minor:
        say_wrapped("Ask your accountant whether tax is on the shop's commission; none is booked for it.")
    say(f"Next: {here.typed(f'invoice show {made.number}')} -o invoice-{made.number}.pdf")


def _draft(here: Desk, card: CustomerCard, over: list[int]) -> InvoiceView:
    row = InvoiceRow(0, printed_from(here.rows(), "").entry, 0, "invoice", here.today, card.id, None, None)
    return invoice_view(here.rows(), row, program=__version__, sales=over)
