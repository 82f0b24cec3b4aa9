"""soapledger sale credit."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Why
from ledger.cli.kit.show import say_wrapped
from ledger.cli.sale.options import Bank, Card, Cash, Number, commission_words, read_number, say_to_pay_back, way_of
from ledger.cli.stock.bars import read_bars
from ledger.errors import BadInput
from ledger.operations.sale.credit import credit
from ledger.units.money import parse_money, show_money
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    which: Number,
    reason: Why,
    amount: Annotated[str | None, typer.Argument(help="How much (all that is left of it).", metavar="[AMOUNT]")] = None,
    bars: Annotated[
        list[str] | None,
        typer.Option("--bars", help="What so many bars were sold for, e.g. 26-118-0=2.", metavar="CODE=N"),
    ] = None,
    line: Annotated[str | None, typer.Option("--of-line", help="Only of this line.", metavar="NUMBER")] = None,
    cash: Cash = False,
    card: Card = False,
    bank: Bank = False,
    on: On = None,
) -> None:
    """Take money of a sale back though no bars come back, e.g. sale credit 12 --bars 26-118-0=2 --reason "broken".

    --cash, --card or --bank: it was paid back so. Bars that do come back: soapledger return.
    """
    if bars and line:
        raise BadInput("Give --bars or --of-line, not both.")
    here = desk(ctx)
    currency = here.settings.currency
    made = credit(
        here.book(),
        read_number(which),
        on=here.day(on),
        reason=reason,
        amount_minor=parse_money(amount, currency, what="the credit") if amount else None,
        line=parse_pieces(line, what="the number of the line") if line else None,
        bars=read_bars(bars) if bars else None,
        way=way_of(cash=cash, card=card, bank=bank),
    )
    tax = f", {show_money(made.tax_minor, currency)} of it tax" if made.tax_minor is not None else ""
    paid = f", {show_money(made.paid_minor, currency)} paid back" if made.commission_minor else ", paid back"
    paid = paid if made.paid_minor else ""
    given = commission_words(made.commission_minor, currency)
    say_wrapped(f"Credit {made.number} of sale {made.of}: {show_money(made.amount_minor, currency)}{tax}{given}{paid}.")
    if made.open_minor:
        say_to_pay_back(made.of, made.open_minor, currency)
