"""soapledger price end."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import say_wrapped
from ledger.cli.sale.outlet import From, Product, Stall, To, day_from, outlet_of, recipe_of
from ledger.operations.sale.set_price import PriceFor, end_price
from ledger.units.dates import show_date
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    product: Product,
    offer: Annotated[
        str | None, typer.Option("--offer", help="End the offer of so many bars, e.g. 3.", metavar="NUMBER")
    ] = None,
    stall: Stall = None,
    to: To = None,
    from_: From = None,
) -> None:
    """End a price or an offer from a day on; what was set for more than it holds again, if anything was."""
    here = desk(ctx)
    bars = parse_pieces(offer.partition(" for ")[0], what="the number of bars of the offer") if offer else 1
    on = day_from(here, from_)
    recipe, name = recipe_of(here, product)
    outlet, where = outlet_of(here, stall, to)
    words = f"{name}{f' at {where}' if stall else f' for {where}' if to else ''}"
    end_price(here.book(), PriceFor(recipe, outlet, words), on=on, bars=bars)
    say_wrapped(f"From {show_date(on)} {'no price' if bars == 1 else f'no offer of {bars}'} is set for {words}.")
