"""soapledger tax set."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.show import say, say_wrapped
from ledger.cli.sale.outlet import From, Stall, To, day_from, outlet_of, recipe_of
from ledger.errors import BadInput
from ledger.operations.sale.set_tax import RateSet, set_tax
from ledger.units.quantity import parse_share


def command(
    ctx: typer.Context,
    rate: Annotated[
        str | None, typer.Argument(help="The rate, e.g. 20%; none: no tax is booked.", metavar="[RATE|none]")
    ] = None,
    name: Annotated[str | None, typer.Option("--name", help="What it is called, e.g. VAT.")] = None,
    product: Annotated[str | None, typer.Option("--product", help="Of this product alone.")] = None,
    stall: Stall = None,
    to: To = None,
    country: Annotated[str | None, typer.Option("--country", help="Of customers in this country, e.g. FR.")] = None,
    number: Annotated[
        str | None, typer.Option("--number", help="The number you are registered under.", metavar="NUMBER")
    ] = None,
    from_: From = None,
) -> None:
    """Set, by name, a rate of tax or the number you are registered under, e.g. soapledger tax set 20% --name VAT.

    Off unless set. What is booked is what you set: ask your accountant which rates hold for you.
    """
    here = desk(ctx)
    if rate is None and number is None:
        raise BadInput("Give a rate, such as 20%, or the number you are registered under: --number.")
    by = here.decider
    if country and (stall or to):
        raise BadInput("Give --country, --stall or --to, not two of them.")
    wanted = None if rate is None else _rate(here, rate, name, product, stall, to, country, from_)
    for one in set_tax(here.book(), wanted, by=by, number=number):
        say_wrapped(f"{one}.")
    say("See: soapledger tax list")


def _rate(
    here: Desk,
    rate: str,
    name: str | None,
    product: str | None,
    stall: str | None,
    to: str | None,
    country: str | None,
    from_: str | None,
) -> RateSet:
    """The rate meant. Raises BadInput for what cannot be read, or is not known."""
    off = rate.strip().casefold() in ("none", "off")
    ppm = None if off else parse_share(rate, what="the rate")
    recipe, called = recipe_of(here, product) if product else (None, "")
    outlet, where = outlet_of(here, stall, to)
    what = [one for one in (called, f"at {where}" if stall else f"for {where}" if to else "") if one]
    what += [f"customers in {country.upper()}"] if country else []
    on = day_from(here, from_)
    return RateSet(ppm, on, name, recipe, outlet.place_id, outlet.customer_id, country, tuple(what))
