"""soapledger invoice show."""

import typer

from ledger.cli.kit.answer import Paper, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force, Json, Pdf
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say_next, table
from ledger.cli.shop.invoices import Number, draw, made_view, say_made
from ledger.cli.shop.words import read_number
from ledger.documents.kit.files import check_free
from ledger.markets import paper_in
from ledger.units.money import show_money
from ledger.views.shop.invoice import InvoiceView


def command(
    ctx: typer.Context, number: Number, output: Pdf = None, paper: PAPER = "", force: Force = False, json: Json = False
) -> None:
    """Show or print an invoice as it was known when it was made, e.g. soapledger invoice show 7 -o invoice.pdf."""
    here = desk(ctx)
    check_free(output, force)
    size = paper_size(paper or paper_in(here.settings.country))
    view = made_view(here, read_number(number, "invoice"))
    drawn = Paper(f"{view.title} is {output}.", lambda: draw(here, view, size), output, force)
    answer(view, json, lambda: _say(view), paper=drawn)


def _say(view: InvoiceView) -> None:
    say_made(view)
    table(
        ("sale", "what", "batch", "bars", "amount"),
        [
            (
                str(one.sale),
                one.what,
                one.batch or "",
                str(one.bars) if one.bars else "",
                show_money(one.amount_minor, view.currency),
            )
            for one in view.lines
        ],
        right=(0, 3, 4),
    )
    named = "credit-note" if view.of_number else "invoice"
    say_next(f"To print it: soapledger invoice show {view.number} -o {named}-{view.number}.pdf")
