"""soapledger invoice credit."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say
from ledger.cli.shop.invoices import Number, Sales, made_view, read_sales, say_made
from ledger.cli.shop.words import read_number
from ledger.operations.shop.invoices import credit_invoice


def command(ctx: typer.Context, number: Number, sales: Sales = None, on: On = None) -> None:
    """Make a credit note over what came back or was credited of an invoice, e.g. soapledger invoice credit 7."""
    here = desk(ctx)
    asked = read_number(number, "invoice")
    made = credit_invoice(here.book(), asked, on=here.day(on), only=read_sales(sales))
    say_made(made_view(here, made.number))
    say(f"Next: {here.typed(f'invoice show {made.number}')} -o credit-note-{made.number}.pdf")
