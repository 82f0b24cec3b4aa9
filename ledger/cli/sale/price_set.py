"""soapledger price set."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.kit.show import confirm, say_wrapped, warn
from ledger.cli.sale.outlet import From, Product, Stall, To, day_from, outlet_of, recipe_of
from ledger.errors import BadInput
from ledger.operations.sale.set_price import PriceFor, set_price
from ledger.units.dates import show_date
from ledger.units.money import parse_money, show_money
from ledger.units.prices import parse_offer
from ledger.views.sale.doubts import new_price_off


def command(
    ctx: typer.Context,
    product: Product,
    price: Annotated[str | None, typer.Argument(help="What one bar costs, taxes included.", metavar="[PRICE]")] = None,
    offer: Annotated[
        str | None, typer.Option("--offer", help='So many for so much, e.g. "3 for 15".', metavar="N for PRICE")
    ] = None,
    stall: Stall = None,
    to: To = None,
    from_: From = None,
    yes: Yes = False,
) -> None:
    """Set a price, or an offer, from a day on, e.g. soapledger price set rosemary 6.50 --stall saturday."""
    here = desk(ctx)
    currency = here.settings.currency
    if (price is None) == (offer is None):
        raise BadInput('Give a price, such as 6.50, or an offer, such as --offer "3 for 15".')
    bars, minor = parse_offer(offer, currency) if offer else (1, parse_money(price or "", currency, what="the price"))
    on = day_from(here, from_)
    recipe, name = recipe_of(here, product)
    outlet, where = outlet_of(here, stall, to)
    if bars == 1 and not yes:
        before = new_price_off(here.rows(), recipe, outlet, minor, on)
        if before:
            question = f"One bar costs {show_money(before, currency)} so far; is {show_money(minor, currency)} right?"
            confirm(question, yes)
    words = f"{name}{f' at {where}' if stall else f' for {where}' if to else ''}"
    dear = set_price(here.book(), PriceFor(recipe, outlet, words), minor, on=on, bars=bars, currency=currency)
    each = show_money(minor, currency) if bars == 1 else f"{bars} for {show_money(minor, currency)}"
    say_wrapped(f"From {show_date(on)}: {words}, {each}.")
    for one in dear:
        warn(f"The offer {one} is no cheaper than single bars now; see: soapledger price list")
