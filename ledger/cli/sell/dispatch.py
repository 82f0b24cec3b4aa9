"""soapledger dispatch."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Yes
from ledger.cli.kit.show import say_next, say_wrapped, warn_of
from ledger.cli.sale.options import Bank, Card, Cash, way_of
from ledger.cli.sell.doubts import sale_doubts
from ledger.cli.sell.filling import Order, say_papers, to_go
from ledger.cli.stock.bars import say_presumed_bare, warn_of_holds, without_a_label
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.errors import BadInput
from ledger.operations.sale.booked import Paid
from ledger.operations.sale.priced import Asked
from ledger.operations.sell.dispatch import dispatch
from ledger.units.money import figure, parse_money, show_money


def command(
    ctx: typer.Context,
    customer: Annotated[str | None, typer.Argument(help="Who gets them: short name or name.")] = None,
    bars: Annotated[list[str] | None, typer.Argument(help="Batches or products, e.g. 26-118-0=6.")] = None,
    price: Annotated[
        str | None, typer.Option("--price", help="What one bar was sold for, tax within (the price that holds there).")
    ] = None,
    reduction: Annotated[str | None, typer.Option("--reduction", help="What is off of all together.")] = None,
    tax_on_top: Annotated[bool, typer.Option("--tax-on-top", help="The tax comes on top of the price.")] = False,
    paid: Annotated[str | None, typer.Option("--paid", help="What was paid of it (all, where a way is given).")] = None,
    cash: Cash = False,
    card: Card = False,
    bank: Bank = False,
    note: Annotated[str | None, typer.Option("--note", help="E.g. the number of your delivery note.")] = None,
    first: First = None,
    order: Order = None,
    yes: Yes = False,
    on: On = None,
) -> None:
    """Send released bars to a shop or a person, e.g. soapledger dispatch tern-hall 26-118-0=12 --price 4.50."""
    here = desk(ctx)
    day = here.day(on)
    going = to_go(here, customer, bars or [], order, day, yes=yes)
    customer, wanted = going.customer, going.bars
    currency, way = here.settings.currency, way_of(cash=cash, card=card, bank=bank)
    each = parse_money(price, currency, what="the price") if price else None
    off = parse_money(reduction, currency, what="the reduction") if reduction else 0
    received = parse_money(paid, currency, what="what was paid") if paid else 0
    if received and way is None:
        raise BadInput("How was it paid? Add --cash, --card or --bank.")
    asked = Asked(each, off, tax_on_top)
    bare = without_a_label(here, wanted)
    warn_of(sale_doubts(here, customer, wanted, asked, day, received, going.order), yes)
    sent = dispatch(
        here.book(),
        customer,
        wanted,
        on=day,
        price_minor=None,
        note=note,
        first=first_supplied(here, first),
        asked=asked,
        paid=[Paid(way, received)] if way and received else (),
        all_by=way if way and not paid else None,
        order_id=going.order,
    )
    name = "On sale or return" if sent.sale is None else f"Sale {sent.sale}"
    say_wrapped(f"{name}: {sent.bars} dispatched to {sent.whom}.")
    if sent.amount_minor is None:
        if sent.sale is not None:
            say_wrapped("No price was told, and none is set: what they brought is not known.")
    else:
        tax = f", {show_money(sent.tax_minor, currency)} of it tax" if sent.tax_minor is not None else ""
        owed = sent.amount_minor - sent.paid_minor
        stands = f"{show_money(owed, currency)} is owed" if owed > 0 else "paid"
        say_wrapped(f"Together {show_money(sent.amount_minor, currency)}{tax}; {stands}.")
        if owed > 0:
            say_next(f"When it is paid: soapledger sale pay {sent.sale} {figure(owed, currency)} --cash")
    say_presumed_bare(here, bare)
    say_papers(here, going, sent.sale)
    warn_of_holds(here, wanted)
