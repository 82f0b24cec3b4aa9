"""soapledger return."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say, say_wrapped
from ledger.cli.sale.options import Bank, Card, Cash, commission_words, read_number, say_to_pay_back, way_of
from ledger.cli.stock.bars import BARS, read_bars
from ledger.errors import BadInput
from ledger.operations.sell.take_back import Refund, take_back
from ledger.units.money import parse_money, show_money


def command(
    ctx: typer.Context,
    bars: BARS,
    from_: Annotated[str | None, typer.Option("--from", help="The customer.")] = None,
    stall: Annotated[str | None, typer.Option("--stall", help="The stall they were bought at.")] = None,
    sale: Annotated[str | None, typer.Option("--sale", help="The sale they are of (the latest).")] = None,
    refund: Annotated[
        str | None, typer.Option("--refund", help="What is taken off for all of them (what they were sold for).")
    ] = None,
    no_refund: Annotated[str | None, typer.Option("--no-refund", help="Nothing is taken off, and why.")] = None,
    cash: Cash = False,
    card: Card = False,
    bank: Bank = False,
    reason: Annotated[str | None, typer.Option("--reason", help="Why they came back.")] = None,
    on: On = None,
) -> None:
    """Book bars that came back, on the returns shelf, e.g. soapledger return 26-118-0=2 --from tern-hall --cash.

    --cash, --card or --bank: the money was paid back so. Without one it is owed, or less is owed of the sale.
    """
    if sum(one is not None for one in (from_, stall, sale)) > 1:
        raise BadInput("Give --from a customer, --stall or --sale, not two of them.")
    way = way_of(cash=cash, card=card, bank=bank)
    if no_refund is not None and (refund is not None or way):
        raise BadInput("--no-refund says that no money went back; leave it out, or --refund and how it was paid.")
    here = desk(ctx)
    wanted, currency = read_bars(bars), here.settings.currency
    amount = parse_money(refund, currency, what="the refund") if refund else None
    came = take_back(
        here.book(),
        wanted,
        customer=from_,
        stall=stall,
        on=here.day(on),
        reason=reason,
        sale=read_number(sale) if sale else None,
        refund=Refund(amount, no_refund, way),
    )
    say_wrapped(f"{came.bars} from {came.whom}, on the returns shelf.")
    for number, of in came.returns:
        say(f"Return {number}{f' of sale {of}' if of else ', sold before sales were kept'}.")
    if no_refund is not None:
        say_wrapped(f"Nothing is taken back: {no_refund}.")
    elif came.amount_minor is not None:
        paid = f", {show_money(came.paid_minor, currency)} paid back" if came.paid_minor else ""
        given = commission_words(came.commission_minor, currency)
        say_wrapped(f"{show_money(came.amount_minor, currency)} is taken back{given}{paid}.")
    for of, minor in came.still_open:
        say_to_pay_back(of, minor, currency)
    codes = " ".join(bars)
    say_wrapped("They do not go back on sale by themselves. Once someone decided, each by name and with a reason:")
    say(f'  soapledger resell {codes} --by NAME --reason "…"        # on sale again')
    say(f'  soapledger shelf keep {codes} --by NAME --reason "…"    # or shelf waste')
